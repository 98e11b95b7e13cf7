import type { NumberColumn, TextColumn } from '../../record/column.js';
import type { RecordTable } from '../../record/records.js';

/** The recorded text column of that name; throws when the table has none. */
export function textOf(table: RecordTable, name: string): TextColumn {
  const column = table.columns.get(name);
  if (column?.kind !== 'text') throw new Error(`the records of ${table.definition.name} lack the text ${name}`);
  return column;
}

/** The recorded number, date or instant column of that name; throws when the table has none. */
export function numbersOf(table: RecordTable, name: string): NumberColumn {
  const column = table.columns.get(name);
  if (column?.kind !== 'number') throw new Error(`the records of ${table.definition.name} lack the number ${name}`);
  return column;
}

/** The dictionary code of a text in a column; -1, which no row carries, when it does not occur. */
export function codeOf(column: TextColumn, text: string): number {
  return text === '' ? -1 : column.dictionary.indexOf(text);
}
