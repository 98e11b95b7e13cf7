import type { Dialect } from '../crosswalk.js';
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

/** Cuts parts of a file into rows, in the dialect that they show; the first part begins where the file does. */
export function cutSample(
  windows: readonly Uint8Array[],
  isWhole: boolean,
  isSheet: boolean,
): Pick<Sample, 'delimiter' | 'headerLine' | 'headings' | 'rows'> {
  const first = windows[0] ?? new Uint8Array(0);
  const marked = first[0] === 0xef && first[1] === 0xbb && first[2] === 0xbf;
  const texts = [marked ? first.subarray(3) : first, ...windows.slice(1)];
  const plain: Dialect = { ...plainDialect, isSheet };
  const delimiter = isSheet ? 'comma' : delimiterOf(texts[0]!, plain);
  const cutRows = rowsOf(texts, { ...plain, delimiter: delimiters[delimiter] }, isWhole);
  const rows = isSheet ? evenRows(cutRows) : cutRows;
  const width = usualWidth(rows.slice(0, looked));
  const place = rows.findIndex(({ cells }) => cells.length === width && cells.every((cell) => cell !== ''));
  const header = rows[Math.max(0, place)];
  if (header === undefined) return { delimiter, headerLine: 1, headings: [], rows: [] };
  const below = rows.slice(Math.max(0, place) + 1).map(({ cells }) => cells);
  const isRow = (cells: readonly string[]) => cells.length === width && cells.join('\n') !== header.cells.join('\n');
  return { delimiter, headerLine: header.line, headings: header.cells, rows: below.filter(isRow) };
}
