import { inTable, type Problem, wholeFile } from '../problem/problem.js';
import { AsideTexts } from './aside-texts.js';
import type { FileRule } from './crosswalk.js';
import { Draft } from './draft.js';
import { findHeader } from './find-header.js';
import { fittedRule, problemsOfFold } from './fitted-rule.js';
import { columnNames, type Header, readHeader } from './header.js';
import { lastRowsFrom } from './last-rows.js';
import { type LeftOutRow, lastRowsLeftOut } from './leave-out.js';
import type { MendedRow } from './mending/mending.js';
import type { MissingTimes } from './missing-times.js';
import { type RangeSettings, readInRanges } from './range/read-in-ranges.js';
import { type RowRequest, type RowsRead, readRows } from './read-rows.js';
import { RecordScanner } from './record-scanner.js';
import { Remarks } from './remarks.js';
import { encodingName } from './source/encoding.js';
import { openSource } from './source/open-source.js';
import { PlainFile } from './source/plain-file.js';
import { SourceError, type TextSource } from './source/text-source.js';
import type { UnmatchedWater } from './waters/alias.js';

/** What reading a file needs to know beside the file itself. */
export interface ReadingRequest extends RowRequest {
  /** The folder of exports. */
  readonly from: string;
  /** The file's path below it. */
  readonly file: string;
  /** Its place in the order of reading. */
  readonly place: number;
  readonly crosswalk: string;
  /** How many bytes are asked for at once. */
  readonly chunk: number;
  /** How large files are read by several threads; null where one reads all. */
  readonly ranges: RangeSettings | null;
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
  readonly leftOut: LeftOutRow[];
  /** The rows, by their places in the draft, whose values stand in rows of other files. */
  readonly joined: Set<number>;
  /** The rows, by their places in the draft, whose look was called clean and is read as absent, as the craft lacks the part. */
  readonly absent: Set<number>;
  /** How often each field was missing, by the text that said so. */
  readonly missing: MissingTimes;
  /** Of those, the ones that were read as a person mended them. */
  readonly mended: readonly MendedRow[];
  /** The names of waters that matched none in an import before, whose matches still hold; null where they must be matched. */
  readonly unmatchedBefore: readonly UnmatchedWater[] | null;
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

function withoutEnd(file: string, line: number): Problem {
  const remedy = 'Look whether it is the right file, and whether the crosswalk names its delimiter and quote.';
  const problem = stopped(
    'row-too-long',
    file,
    'more than 16 million bytes without a line end',
    'rows of text',
    remedy,
  );
  return { ...problem, place: inTable(file, line, null, null) };
}

function changed(file: string): Problem {
  const remedy = 'Import again once nothing writes to the file.';
  return stopped('file-changed', file, 'it was written to while it was read', 'a file that stays as it is', remedy);
}

function noRows(): RowsRead {
  return {
    remarks: new Remarks(),
    asideTexts: new AsideTexts(),
    read: 0,
    leftOut: [],
    missing: {},
    mended: [],
    undecodable: 0,
    endless: null,
  };
}

/** Below this many bytes a file is read in one go. */
const worthRanges = 1 << 21;

/** Reads one exported file, row by row, into a draft; what is wrong with a row is remarked and the reading goes on. */
export async function readFile(request: ReadingRequest): Promise<FileReading> {
  const { file } = request;
  let { rule } = request;
  const problems: Problem[] = [];
  let source: TextSource | null = null;
  let draft = new Draft(rule.table, request.place, 0, rule.fields, rule.fold);
  const done = async (header: Header, headings: readonly string[], rows: RowsRead): Promise<FileReading> => {
    const { undecodable, endless, ...told } = rows;
    if (endless !== null) problems.push(withoutEnd(file, endless));
    // One garbled row is a slip; one in a hundred means that the file is in another encoding.
    if (undecodable > 1 && undecodable * 100 > rows.read)
      problems.push(notText(file, encodingName(rule.dialect.encoding)));
    const fingerprint = source === null ? '' : await source.fingerprint();
    const { crosswalk } = request;
    const leftOut = [...rows.leftOut];
    const own = { file, crosswalk, rule, fingerprint, header, headings, draft, unmatchedBefore: null };
    return { ...own, ...told, leftOut, joined: new Set(), absent: new Set(), problems };
  };
  try {
    source = await openSource(request.from, file, rule, request.chunk);
    // Offsets are of the text, whose letters may take up to three bytes for one of the file.
    const textSize = rule.dialect.encoding === 'utf-8' ? source.size : source.size * 3;
    const scanner = new RecordScanner(rule.dialect, request.chunk);
    const found = await findHeader(request, scanner, source);
    const named = new Set(found.cells.map(columnNames(rule)));
    rule = fittedRule(rule, (column) => named.has(column));
    draft = new Draft(rule.table, request.place, textSize, rule.fields, rule.fold);
    const { header, headings, problems: headerProblems } = readHeader(file, found.line, found.cells, rule);
    problems.push(...headerProblems, ...problemsOfFold(rule, file, found.line));
    if (problems.length > 0) return await done(header, headings, noRows());

    const last = lastRowsLeftOut(rule);
    const lastFrom =
      last === 0 ? Number.POSITIVE_INFINITY : await lastRowsFrom({ ...request, rule }, headings.length, last);
    const known = { header, headings, bytes: found.bytes, lastFrom };
    // Which row is at a line is known only to whoever reads from the beginning.
    const ranges = request.mended.length > 0 ? null : request.ranges;
    if (
      ranges !== null &&
      source instanceof PlainFile &&
      (ranges.alone !== null || source.size - scanner.offset > (ranges.length ?? worthRanges))
    ) {
      const place = { size: source.size, offset: scanner.offset, line: scanner.nextLine };
      const stamp = await source.stamp();
      const { fingerprint, ...rows } = await readInRanges({ ...request, rule }, ranges, known, place, draft);
      if ((await source.stamp()) !== stamp) problems.push(changed(file));
      request.progress(rows.read, source.size, source.size);
      return { ...(await done(header, headings, rows)), fingerprint };
    }
    const text = source;
    const progress = (read: number) => request.progress(read, text.done, text.size);
    const rows = await readRows({ ...request, rule }, known, scanner, text, draft, progress);
    request.progress(rows.read, source.size, source.size);
    return await done(header, headings, rows);
  } catch (error) {
    if (!(error instanceof SourceError)) throw error;
    const { code, seen, wanted, remedy } = error.fault;
    problems.push(stopped(code, file, seen, wanted, remedy));
    return await done(new Map(), [], noRows());
  } finally {
    await source?.close();
  }
}
