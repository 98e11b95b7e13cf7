import type { BookTable } from '../record/book.js';
import type { NumberColumn, TextColumn } from '../record/column.js';

/** A text column of the book; throws where the field is not text. */
export function bookText(table: BookTable, name: string): TextColumn {
  const column = table.column(name);
  if (column.kind !== 'text') throw new Error(`${name} of ${table.name} is not text`);
  return column;
}

/** A number column of the book; throws where the field is not a number. */
export function bookNumber(table: BookTable, name: string): NumberColumn {
  const column = table.column(name);
  if (column.kind !== 'number') throw new Error(`${name} of ${table.name} is not a number`);
  return column;
}

/** Whether a row's text is that value; false where it is missing. */
export function isValue(table: BookTable, name: string, value: string): (row: number) => boolean {
  const { codes, dictionary } = bookText(table, name);
  const wanted = dictionary.indexOf(value, 1);
  return (row) => codes[row] === wanted;
}

/** Whether a row has a value of that field. */
export function hasText(table: BookTable, name: string): (row: number) => boolean {
  const { codes } = bookText(table, name);
  return (row) => codes[row] !== 0;
}

/** How many rows pass a test. */
export function countRows(rows: Uint32Array, passes: (row: number) => boolean): number {
  let count = 0;
  for (const row of rows) if (passes(row)) count++;
  return count;
}
