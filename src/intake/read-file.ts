import { isUtf8 } from 'node:buffer';
import { inTable, type Problem, wholeFile } from '../problem/problem.js';
import { AsideTexts } from './aside-texts.js';
import type { FileRule } from './crosswalk.js';
import { Draft } from './draft.js';
import { fill, findHeader } from './find-header.js';
import { type Header, readHeader } from './header.js';
import type { Texts } from './key-space.js';
import { lastRowsFrom } from './last-rows.js';
import { type LeftOutRow, LeftOutRows, lastRowsLeftOut } from './leave-out.js';
import { met, RecordScanner } from './record-scanner.js';
import { Remarks } from './remarks.js';
import { RowReader } from './row-reader.js';
import { RowRemarks } from './row-remarks.js';
import { encodingName } from './source/encoding.js';
import { openSource } from './source/open-source.js';
import { SourceError, type TextSource } from './source/text-source.js';
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
  /** The headings as the file spells them, in order. */
  readonly headings: readonly string[];
  readonly draft: Draft;
  /** Rows met, whether they came into the draft or not. */
  readonly read: number;
  /** Of those, the ones that a rule of the crosswalk leaves out. */
  readonly leftOut: readonly LeftOutRow[];
  readonly remarks: Remarks;
  readonly asideTexts: AsideTexts;
  /** What stops the file as a whole. */
  readonly problems: readonly Problem[];
}

function stopped(code: string, file: string, seen: string, wanted: string, remedy: string): Problem {
  return { code, severity: 'stops', place: wholeFile(file), seen, wanted, remedy };
}

function notText(file: string, encoding: string): Problem {
  const remedy = `Export the file again as ${encoding}, or declare its encoding under dialect in the crosswalk.`;
  return stopped(`not-${encoding}`, file, `bytes that are no ${encoding}`, `text in ${encoding}`, remedy);
}

function saysHeaderAgain({ bytes, recordStart, recordEnd }: RecordScanner, lines: readonly Uint8Array[]): boolean {
  return lines.some(
    (line) =>
      recordEnd - recordStart === line.length &&
      bytes[recordStart] === line[0] &&
      Buffer.compare(bytes.subarray(recordStart, recordEnd), line) === 0,
  );
}

/** Reads one exported file, row by row, into a draft; what is wrong with a row is remarked and the reading goes on. */
export async function readFile(request: ReadingRequest): Promise<FileReading> {
  const { file, rule } = request;
  const problems: Problem[] = [];
  let source: TextSource | null = null;
  let draft = new Draft(rule.table, request.place, 0, rule.fields, rule.fold);
  const done = async (
    header: Header,
    headings: readonly string[],
    read: number,
    remarks = new Remarks(),
    asideTexts = new AsideTexts(),
    leftOut: readonly LeftOutRow[] = [],
  ): Promise<FileReading> => ({
    file,
    crosswalk: request.crosswalk,
    rule,
    fingerprint: source === null ? '' : await source.fingerprint(),
    header,
    headings,
    draft,
    read,
    leftOut,
    remarks,
    asideTexts,
    problems,
  });
  try {
    source = await openSource(request.from, file, rule, request.chunk);
    // Offsets are of the text, whose letters may take up to three bytes for one of the file.
    const textSize = rule.dialect.encoding === 'utf-8' ? source.size : source.size * 3;
    draft = new Draft(rule.table, request.place, textSize, rule.fields, rule.fold);
    const scanner = new RecordScanner(rule.dialect, request.chunk);
    const found = await findHeader(request, scanner, source);
    const { header, headings, problems: headerProblems } = readHeader(file, found.line, found.cells, rule);
    problems.push(...headerProblems);
    if (problems.length > 0) return done(header, headings, 0);

    const width = headings.length;
    const withheld = [...rule.privateColumns].map((name) => header.get(name)!).sort((a, b) => a - b);
    const remarks = new RowRemarks(scanner, draft, withheld, width);
    const rows = new RowReader(request, scanner, header, draft, remarks);
    scanner.width = width;
    const last = lastRowsLeftOut(rule);
    const lastFrom = last === 0 ? Number.POSITIVE_INFINITY : await lastRowsFrom(request, width, last);
    const leftOut = new LeftOutRows(scanner, rule, header, lastFrom);
    let read = 0;
    let undecodable = 0;
    for (;;) {
      const state = scanner.next();
      if (state === met.more) {
        await fill(scanner, source);
        request.progress(read, source.done, source.size);
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
      if (saysHeaderAgain(scanner, found.bytes)) continue;
      read++;
      if (leftOut.takes()) continue;
      if (rule.dialect.isSheet && scanner.count < width) scanner.padTo(width);
      if (scanner.broken) rows.setAsideBroken();
      else if (scanner.count !== width) rows.setAsideRagged();
      else if (scanner.high && !isUtf8(scanner.bytes.subarray(scanner.recordStart, scanner.recordEnd))) {
        undecodable++;
        rows.setAsideUndecodable();
      } else rows.read();
    }
    // One garbled row is a slip; one in a hundred means that the file is in another encoding.
    if (undecodable > 1 && undecodable * 100 > read) problems.push(notText(file, encodingName(rule.dialect.encoding)));
    request.progress(read, source.size, source.size);
    return await done(header, headings, read, remarks.remarks, remarks.asideTexts, leftOut.rows);
  } catch (error) {
    if (!(error instanceof SourceError)) throw error;
    const { code, seen, wanted, remedy } = error.fault;
    problems.push(stopped(code, file, seen, wanted, remedy));
    return await done(new Map(), [], 0);
  } finally {
    await source?.close();
  }
}
