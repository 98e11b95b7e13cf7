import { type BookTable, waitEnding } from '../../../src/record/book.js';
import { numberAt, textAt } from '../../../src/record/column.js';

/** The values of a book's field as plain values; waits as `open 30`. */
export function values(table: BookTable, name: string): (string | number | null)[] {
  const column = table.column(name);
  const rows = Array.from({ length: table.rowCount }, (_, row) => row);
  if (column.kind === 'text') return rows.map((row) => textAt(column, row));
  if (column.kind === 'number') return rows.map((row) => numberAt(column, row));
  const endings = Object.keys(waitEnding);
  return rows.map((row) => {
    const ending = endings[column.ending[row]!]!;
    return ending === 'unknown' ? ending : `${ending} ${column.minutes[row]}`;
  });
}
