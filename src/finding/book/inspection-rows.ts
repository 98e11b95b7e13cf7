import type { Book, BookTable } from '../../record/book.js';
import type { TextColumn } from '../../record/column.js';
import { parentRows } from './parent-rows.js';

/** The key by which rows name the inspection they belong to. */
const key = 'inspection';

/** Whether each row of a table belongs to an inspection, as parts looked at and washes do. */
export function belongsToInspections(table: BookTable): boolean {
  return table.name !== 'inspections' && table.fields.has(key);
}

/** The parents of a table's rows, found once. */
const found = new WeakMap<BookTable, Int32Array>();

/** The row of the inspection that each row of a table belongs to; it must not be changed. */
export function parentsIn(book: Book, table: BookTable): Int32Array {
  const parents = found.get(table) ?? parentRows(keysOf(book.tables.get('inspections')!), keysOf(table));
  found.set(table, parents);
  return parents;
}

/** The row of the inspection that each of some rows belongs to, in their order. */
export function inspectionRows(book: Book, table: BookTable, rows: Uint32Array): Uint32Array {
  const parents = parentsIn(book, table);
  return rows.map((row) => parents[row]!);
}

function keysOf(table: BookTable): TextColumn {
  const column = table.column(key);
  if (column.kind !== 'text') throw new Error(`${table.name} has no keys of inspections`);
  return column;
}
