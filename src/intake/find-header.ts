import { isHeader, joinHeadings } from './header.js';
import type { ReadingRequest } from './read-file.js';
import { met, type RecordScanner } from './record-scanner.js';
import { SourceError, type TextSource } from './source/text-source.js';

/** A file's header before its headings are looked at. */
export interface HeaderLines {
  /** The headings, their spaces left off; blank where a column has none. */
  readonly cells: readonly string[];
  /** The line on which it begins. */
  readonly line: number;
  /** The bytes of each of its lines, by which a header that is said again is known. */
  readonly bytes: readonly Uint8Array[];
}

/** How many rows are looked at for a header that is found by its headings. */
const mostPreamble = 100;

/** Reads on into a scanner; says how many bytes came. */
export async function fill(scanner: RecordScanner, source: TextSource): Promise<number> {
  const count = await source.read(scanner.room());
  scanner.filled(count);
  return count;
}

async function nextRow(scanner: RecordScanner, source: TextSource): Promise<boolean> {
  for (;;) {
    const state = scanner.next();
    if (state !== met.more) return state === met.row;
    await fill(scanner, source);
  }
}

async function skipMark(scanner: RecordScanner, source: TextSource): Promise<void> {
  while (scanner.waiting().length < 3 && (await fill(scanner, source)) > 0);
  const [first, second, third] = scanner.waiting();
  if (first === 0xef && second === 0xbb && third === 0xbf) scanner.skip(3);
  while (scanner.waiting().length === 0 && (await fill(scanner, source)) > 0);
}

/** The header of a text, where the dialect says it is; throws a `SourceError` where there is none. */
export async function findHeader(
  { rule }: ReadingRequest,
  scanner: RecordScanner,
  source: TextSource,
): Promise<HeaderLines> {
  const { headerLine, headerSpan, isSheet } = rule.dialect;
  await skipMark(scanner, source);
  if (scanner.waiting().length === 0) {
    const remedy = 'Export it again; if there is nothing to export, take it out of the crosswalk.';
    throw new SourceError('empty-file', 'no text', 'a header and rows', remedy);
  }
  const texts: (readonly string[])[] = [];
  const bytes: Uint8Array[] = [];
  let line = 0;
  for (let rows = 0; ; rows++) {
    if (!(await nextRow(scanner, source)) || (headerLine === null && rows === mostPreamble)) {
      const wanted = headerLine === null ? 'a line with the headings' : `a header on line ${headerLine}`;
      const remedy = 'Export it again, or mend header_line in the crosswalk.';
      throw new SourceError('empty-file', 'no header', wanted, remedy);
    }
    if (headerLine !== null && scanner.line < headerLine) continue;
    const cells = Array.from({ length: scanner.count }, (_, position) => scanner.cellText(position).trim());
    if (headerLine === null && !isHeader(cells, rule)) continue;
    if (texts.length === 0) line = scanner.line;
    texts.push(cells);
    bytes.push(scanner.bytes.slice(scanner.recordStart, scanner.recordEnd));
    if (texts.length === headerSpan) return { cells: joinHeadings(texts, isSheet), line, bytes };
  }
}
