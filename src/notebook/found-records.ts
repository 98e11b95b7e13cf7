import { belongsToInspections, inspectionRows } from '../finding/book/inspection-rows.js';
import type { Finding, FindingTable, RowsBehind, ToldRows } from '../finding/finding.js';
import type { Book, BookTable } from '../record/book.js';
import type { SheetColumn } from './evaluated.js';

/** Records that a number tells of: ascending rows of a table. */
export interface FoundRecords {
  readonly table: string;
  readonly rows: Uint32Array;
}

/**
 * The records that the numbers of a finding's answer tell of, by its row and the column's name: of a count its own, of a share
 * its cases, all, and those that are no cases. Null where the finding tells more than that, or does not say it of every number.
 */
export function foundRecords(
  { tellsCountsOnly }: Finding,
  book: Book,
  table: BookTable,
  answer: FindingTable,
  columns: readonly SheetColumn[],
): readonly ReadonlyMap<string, readonly FoundRecords[]>[] | null {
  if (tellsCountsOnly !== true) return null;
  const numbers = columns.flatMap(({ name, role }, at) => (role === 'key' ? [] : [{ name, at }]));
  const rows: ReadonlyMap<string, readonly FoundRecords[]>[] = [];
  for (const [row, cells] of answer.rows.entries()) {
    const told = new Map<string, readonly FoundRecords[]>();
    for (const { name, at } of numbers) {
      if (cells[at] === null) continue;
      const counted = plainCount(answer.counted?.(row, name) ?? null);
      if (counted === null) return null;
      told.set(name, recordsOf(book, table, counted));
    }
    rows.push(told);
  }
  return rows;
}

/** A number of rows of the finding's own table, or a share of them. */
interface PlainCount extends Pick<RowsBehind, 'denominator' | 'counts'> {
  readonly numerator: ToldRows;
}

function plainCount(behind: RowsBehind | null): PlainCount | null {
  if (behind === null || behind.model !== null || behind.uses.length > 0) return null;
  const { numerator, denominator, counts } = behind;
  const isOfOwnRows = [numerator, denominator].every((side) => side?.table === undefined && side?.adds === undefined);
  return numerator === null || !isOfOwnRows ? null : { numerator, denominator, counts };
}

function recordsOf(book: Book, table: BookTable, { numerator, denominator, counts }: PlainCount): FoundRecords[] {
  const isOfCraft = counts === 'craft' && belongsToInspections(table);
  const found = ({ rows }: ToldRows): FoundRecords =>
    isOfCraft
      ? { table: 'inspections', rows: markedRows(marksOf(inspectionRows(book, table, rows))) }
      : { table: table.name, rows };
  if (denominator === null) return [found(numerator)];
  const [cases, all] = [found(numerator), found(denominator)];
  const isCase = marksOf(cases.rows);
  return [cases, all, { table: all.table, rows: all.rows.filter((row) => isCase[row] !== 1) }];
}

/** A mark at each of some rows, as far as the last of them. */
function marksOf(rows: Uint32Array): Uint8Array {
  const marks = new Uint8Array(rows.reduce((most, row) => Math.max(most, row + 1), 0));
  for (let at = 0; at < rows.length; at++) marks[rows[at]!] = 1;
  return marks;
}

/** The rows that are marked, ascending. */
function markedRows(marks: Uint8Array): Uint32Array {
  const rows = new Uint32Array(marks.length);
  let count = 0;
  for (let row = 0; row < marks.length; row++) if (marks[row] === 1) rows[count++] = row;
  return rows.slice(0, count);
}
