import { isUtf8 } from 'node:buffer';
import { createHash } from 'node:crypto';
import { open } from 'node:fs/promises';
import { join } from 'node:path';
import { inTable, type Problem, wholeFile } from '../problem/problem.js';
import { AsideTexts } from './aside-texts.js';
import type { FileRule } from './crosswalk.js';
import { Draft } from './draft.js';
import { type Header, readHeader } from './header.js';
import type { Texts } from './key-space.js';
import { met, RecordScanner } from './record-scanner.js';
import { Remarks } from './remarks.js';
import { RowReader } from './row-reader.js';
import { RowRemarks } from './row-remarks.js';
import type { ZoneClock } from './time-zone.js';

/** What reading needs to know beside the file itself. */
export interface ReadingRequest {
  /** The folder of exports. */
  readonly from: string;
  /** The file's path below it. */
  readonly file: string;
  /** Its place in the order of reading. */
  readonly place: number;
  readonly rule: FileRule;
  readonly crosswalk: string;
  readonly texts: Texts;
  readonly key: Uint8Array;
  readonly clockOf: (zone: string) => ZoneClock;
  /** The clock of a station, by its number among the stations' keys; null where nothing is known of it. */
  readonly stationClock: (station: number) => ZoneClock | null;
  /** How many bytes are asked for at once. */
  readonly chunk: number;
  readonly progress: (rows: number, bytesDone: number, bytesTotal: number) => void;
}

/** What one file gave, before its rows are held against those of other files. */
export interface FileReading {
  readonly file: string;
  readonly crosswalk: string;
  readonly rule: FileRule;
  readonly fingerprint: string;
  readonly header: Header;
  readonly draft: Draft;
  /** Rows met, whether they came into the draft or not. */
  readonly read: number;
  readonly remarks: Remarks;
  readonly asideTexts: AsideTexts;
  /** What stops the file as a whole. */
  readonly problems: readonly Problem[];
}

function stopped(code: string, file: string, seen: string, wanted: string, remedy: string): Problem {
  return { code, severity: 'stops', place: wholeFile(file), seen, wanted, remedy };
}

function notText(file: string): Problem {
  const remedy = 'Export the file again as UTF-8.';
  return stopped('not-utf-8', file, 'bytes that are no UTF-8', 'text in UTF-8', remedy);
}

/** The bytes of a file, handed to a scanner chunk by chunk and fingerprinted on the way. */
class ByteSource {
  readonly #handle: Awaited<ReturnType<typeof open>>;
  readonly #hash = createHash('sha256');
  readonly #chunk: number;
  readonly size: number;
  done = 0;

  constructor(handle: Awaited<ReturnType<typeof open>>, size: number, chunk: number) {
    this.#handle = handle;
    this.size = size;
    this.#chunk = chunk;
  }

  async fill(scanner: RecordScanner): Promise<number> {
    const room = scanner.room();
    const { bytesRead } = await this.#handle.read(room, 0, Math.min(room.length, this.#chunk), null);
    this.#hash.update(room.subarray(0, bytesRead));
    scanner.filled(bytesRead);
    this.done += bytesRead;
    return bytesRead;
  }

  /** The SHA-256 of everything that was read. */
  fingerprint(): string {
    return this.#hash.digest('hex');
  }
}

/** Skips a byte order mark; says whether the bytes begin as UTF-16 does. */
function skipMark(scanner: RecordScanner): boolean {
  const [first, second, third] = scanner.waiting();
  if (first === 0xef && second === 0xbb && third === 0xbf) scanner.skip(3);
  return (first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff);
}

async function nextRow(scanner: RecordScanner, source: ByteSource): Promise<number> {
  for (;;) {
    const state = scanner.next();
    if (state !== met.more) return state;
    await source.fill(scanner);
  }
}

/** The header's headings; a problem where there is none. */
async function findHeader(
  request: ReadingRequest,
  scanner: RecordScanner,
  source: ByteSource,
): Promise<readonly string[] | Problem> {
  while (source.done < 3 && (await source.fill(scanner)) > 0);
  if (source.done === 0) {
    const remedy = 'Export it again; if there is nothing to export, take it out of the crosswalk.';
    return stopped('empty-file', request.file, 'no bytes', 'a header and rows', remedy);
  }
  if (skipMark(scanner)) return notText(request.file);
  const { headerLine } = request.rule.dialect;
  for (;;) {
    const state = await nextRow(scanner, source);
    if (state !== met.row) {
      const remedy = 'Export it again, or mend header_line in the crosswalk.';
      return stopped('empty-file', request.file, 'no header', `a header on line ${headerLine}`, remedy);
    }
    if (scanner.line >= headerLine) break;
  }
  const names: string[] = [];
  for (let position = 0; position < scanner.count; position++) names.push(scanner.cellText(position).trim());
  return names;
}

/** Reads one exported file, row by row, into a draft; what is wrong with a row is remarked and the reading goes on. */
export async function readFile(request: ReadingRequest): Promise<FileReading> {
  const { file, rule } = request;
  const problems: Problem[] = [];
  const handle = await open(join(request.from, file), 'r');
  try {
    const { size } = await handle.stat();
    const source = new ByteSource(handle, size, request.chunk);
    const scanner = new RecordScanner(rule.dialect, request.chunk);
    const draft = new Draft(rule.table, request.place, size, rule.fields, rule.fold);
    const done = (
      header: Header,
      read: number,
      remarks = new Remarks(),
      asideTexts = new AsideTexts(),
    ): FileReading => ({
      file,
      crosswalk: request.crosswalk,
      rule,
      fingerprint: source.fingerprint(),
      header,
      draft,
      read,
      remarks,
      asideTexts,
      problems,
    });

    const names = await findHeader(request, scanner, source);
    if ('code' in names) {
      problems.push(names);
      return done(new Map(), 0);
    }
    const headerBytes = scanner.bytes.slice(scanner.recordStart, scanner.recordEnd);
    const { header, problems: headerProblems } = readHeader(file, scanner.line, names, rule);
    problems.push(...headerProblems);
    if (problems.length > 0) return done(header, 0);

    const withheld = [...rule.privateColumns].map((name) => header.get(name)!).sort((a, b) => a - b);
    const remarks = new RowRemarks(scanner, draft, withheld, names.length);
    const rows = new RowReader(request, scanner, header, draft, remarks);
    scanner.width = names.length;
    let read = 0;
    let undecodable = 0;
    for (;;) {
      const state = scanner.next();
      if (state === met.more) {
        await source.fill(scanner);
        request.progress(read, source.done, size);
        continue;
      }
      if (state === met.end) break;
      if (state === met.tooLong) {
        const remedy = 'Look whether it is the right file, and whether the crosswalk names its delimiter and quote.';
        problems.push({
          ...stopped('row-too-long', file, 'more than 16 million bytes without a line end', 'rows of text', remedy),
          place: inTable(file, scanner.line, null, null),
        });
        break;
      }
      const { recordStart, recordEnd } = scanner;
      if (recordEnd - recordStart === headerBytes.length && scanner.bytes[recordStart] === headerBytes[0]) {
        const record = scanner.bytes.subarray(recordStart, recordEnd);
        if (Buffer.compare(record, headerBytes) === 0) continue;
      }
      read++;
      if (scanner.broken) rows.setAsideBroken();
      else if (scanner.count !== names.length) rows.setAsideRagged();
      else if (scanner.high && !isUtf8(scanner.bytes.subarray(recordStart, recordEnd))) {
        undecodable++;
        rows.setAsideUndecodable();
      } else rows.read();
    }
    // One garbled row is a slip; one in a hundred means that the file is in another encoding.
    if (undecodable > 1 && undecodable * 100 > read) problems.push(notText(file));
    request.progress(read, source.done, size);
    return done(header, read, remarks.remarks, remarks.asideTexts);
  } finally {
    await handle.close();
  }
}
