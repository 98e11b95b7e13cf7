import { choicesOf } from '../../src/finding/choices.js';
import type { Finding, FindingCell, FindingTable } from '../../src/finding/finding.js';
import type { Book } from '../../src/record/book.js';
import type { Estimate } from '../../src/statistic/estimate.js';

/** A finding asked of all rows of its table, or of those named. */
export function ask(
  finding: Finding,
  book: Book,
  by: readonly string[] = [],
  rows?: readonly number[],
  options: Readonly<Record<string, string | number>> = {},
): FindingTable {
  const table = book.tables.get(finding.table)!;
  const every = Array.from({ length: table.rowCount }, (_, row) => row);
  return finding.find(book, table, Uint32Array.from(rows ?? every), by, choicesOf(finding, options));
}

/** The cells of some columns, row by row; estimates as their values. */
export function cells(found: FindingTable, ...names: readonly string[]): (string | number | null)[][] {
  const places = names.map((name) => {
    const at = found.columns.findIndex((column) => column.name === name);
    if (at < 0) throw new Error(`no column ${name} among ${found.columns.map((column) => column.name).join(', ')}`);
    return at;
  });
  return found.rows.map((row) => places.map((at) => plain(row[at]!)));
}

function plain(cell: FindingCell): string | number | null {
  return cell !== null && typeof cell === 'object' ? cell.value : cell;
}

/** The estimate of a column in a row. */
export function estimate(found: FindingTable, row: number, name: string): Estimate {
  const cell = found.rows[row]![found.columns.findIndex((column) => column.name === name)]!;
  if (cell === null || typeof cell !== 'object') throw new Error(`${name} is no estimate`);
  return cell;
}
