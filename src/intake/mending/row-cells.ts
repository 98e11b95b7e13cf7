import type { Dialect } from '../crosswalk.js';
import { met, RecordScanner } from '../record-scanner.js';

/** The cells of one row as it stands in its file; null where it has not as many as its header. */
export function rowCells(row: string, dialect: Dialect, width: number): readonly string[] | null {
  const bytes = Buffer.from(row, 'utf8');
  const scanner = new RecordScanner(dialect, Math.max(1, bytes.length));
  scanner.width = width;
  scanner.room().set(bytes);
  scanner.filled(bytes.length);
  scanner.filled(0);
  const isRow = scanner.next() === met.row && !scanner.broken;
  if (isRow && dialect.isSheet && scanner.count < width) scanner.padTo(width);
  if (!isRow || scanner.count !== width) return null;
  return Array.from({ length: width }, (_, position) => scanner.cellText(position));
}

/** A row as it would stand in its file, cells quoted where they must be. */
export function rowOf(cells: readonly string[], { delimiter, quote }: Dialect): string {
  const between = String.fromCharCode(delimiter);
  if (quote === null) return cells.join(between);
  const mark = String.fromCharCode(quote);
  const mustBeQuoted = (cell: string) => [between, mark, '\r', '\n'].some((letter) => cell.includes(letter));
  return cells
    .map((cell) => (mustBeQuoted(cell) ? mark + cell.replaceAll(mark, mark + mark) + mark : cell))
    .join(between);
}
