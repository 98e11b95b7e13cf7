import type { Dialect } from '../crosswalk.js';
import { joinHeadings } from '../header.js';
import { plainDialect } from '../read-dialect.js';
import { met, RecordScanner } from '../record-scanner.js';
import type { Sample } from './sample.js';

const delimiters = { comma: 44, semicolon: 59, tab: 9, pipe: 124 } as const;
type Delimiter = keyof typeof delimiters;

/** How many rows are looked at to tell the delimiter and the header. */
const looked = 200;

interface Cut {
  readonly line: number;
  readonly cells: readonly string[];
}

function cut(bytes: Uint8Array, dialect: Dialect, most: number): readonly Cut[] {
  const scanner = new RecordScanner(dialect, Math.max(16, bytes.length));
  scanner.room().set(bytes);
  scanner.filled(bytes.length);
  scanner.filled(0);
  const rows: Cut[] = [];
  while (rows.length < most && scanner.next() === met.row) {
    if (scanner.broken) continue;
    const cells = Array.from({ length: scanner.count }, (_, position) => scanner.cellText(position).trim());
    rows.push({ line: scanner.line, cells });
  }
  return rows;
}

/** The number of cells that most rows have. */
function usualWidth(rows: readonly Cut[]): number {
  const counts = new Map<number, number>();
  for (const { cells } of rows) counts.set(cells.length, (counts.get(cells.length) ?? 0) + 1);
  return [...counts].sort(([a, times], [b, others]) => others - times || b - a)[0]?.[0] ?? 0;
}

/** The delimiter by which most rows have the same number of cells, and more than one. */
function delimiterOf(bytes: Uint8Array, dialect: Dialect): Delimiter {
  let best: Delimiter = 'comma';
  let most = 0;
  for (const name of Object.keys(delimiters) as Delimiter[]) {
    const rows = cut(bytes, { ...dialect, delimiter: delimiters[name] }, looked);
    const width = usualWidth(rows);
    const alike = rows.filter(({ cells }) => cells.length === width).length / Math.max(1, rows.length);
    const score = width < 2 ? 0 : alike * Math.log2(width);
    if (score > most) [best, most] = [name, score];
  }
  return best;
}

/** Whether the bytes between two windows are cut: the first row of a later window may lack its beginning. */
function rowsOf(windows: readonly Uint8Array[], dialect: Dialect, isWhole: boolean): readonly Cut[] {
  return windows.flatMap((bytes, index) => {
    const rows = cut(bytes, dialect, Number.POSITIVE_INFINITY);
    const from = index === 0 ? 0 : 1;
    const isLast = index === windows.length - 1;
    return rows.slice(from, isWhole || isLast ? rows.length : -1);
  });
}

/** The rows of a sheet, which keeps no blank cells behind the last that is filled, with as many cells each. */
function evenRows(rows: readonly Cut[]): readonly Cut[] {
  const width = rows.reduce((most, { cells }) => Math.max(most, cells.length), 0);
  return rows.map(({ line, cells }) => ({
    line,
    cells: [...cells, ...Array.from({ length: width - cells.length }, () => '')],
  }));
}

/** A header has most of its cells filled; above it may stand a title, whose other cells are blank or merged with it. */
const mostBlank = 0.4;

function isHeaderRow(cells: readonly string[], width: number): boolean {
  const filled = cells.filter((cell) => cell !== '');
  const isTitle = width > 1 && new Set(filled).size === 1;
  return cells.length === width && !isTitle && width - filled.length <= width * mostBlank;
}

/**
 * Whether a header runs on into the row below it: headings that stand twice, or are blank since one reaches over them, are
 * told apart there, and nothing in it has a digit, as rows of records have.
 */
function runsOn(upper: readonly string[], lower: readonly string[] | undefined, isSheet: boolean): boolean {
  const isWhole = new Set(upper).size === upper.length && !upper.includes('');
  if (isWhole || lower === undefined || lower.some((cell) => /\d/u.test(cell))) return false;
  const joined = joinHeadings([upper, lower], isSheet);
  return new Set(joined).size === joined.length && !joined.includes('');
}

/** Cuts parts of a file into rows, in the dialect that they show; the first part begins where the file does. */
export function cutSample(
  windows: readonly Uint8Array[],
  isWhole: boolean,
  isSheet: boolean,
): Pick<Sample, 'delimiter' | 'headerLine' | 'headerSpan' | 'headings' | 'rows'> {
  const first = windows[0] ?? new Uint8Array(0);
  const marked = first[0] === 0xef && first[1] === 0xbb && first[2] === 0xbf;
  const texts = [marked ? first.subarray(3) : first, ...windows.slice(1)];
  const plain: Dialect = { ...plainDialect, isSheet };
  const delimiter = isSheet ? 'comma' : delimiterOf(texts[0]!, plain);
  const cutRows = rowsOf(texts, { ...plain, delimiter: delimiters[delimiter] }, isWhole);
  const rows = isSheet ? evenRows(cutRows) : cutRows;
  const width = usualWidth(rows.slice(0, looked));
  const place = Math.max(
    0,
    rows.findIndex(({ cells }) => isHeaderRow(cells, width)),
  );
  const header = rows[place];
  if (header === undefined) return { delimiter, headerLine: 1, headerSpan: 1, headings: [], rows: [] };
  const below = rows.slice(place + 1).map(({ cells }) => cells);
  const headerSpan = runsOn(header.cells, below[0], isSheet) ? 2 : 1;
  const joined = headerSpan === 1 ? header.cells : joinHeadings([header.cells, below[0]!], isSheet);
  const headings = joined.map((cell, position) => (cell === '' ? `column ${position + 1}` : cell));
  const said = header.cells.join('\n');
  const isRow = (cells: readonly string[]) => cells.length === width && cells.join('\n') !== said;
  return { delimiter, headerLine: header.line, headerSpan, headings, rows: below.slice(headerSpan - 1).filter(isRow) };
}
