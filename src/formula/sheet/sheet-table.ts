import type { BookField, BookTable } from '../../record/book.js';
import { type Column, numberColumn, textColumn } from '../../record/column.js';
import type { FormulaKind } from '../kind.js';
import { describeUnit } from '../unit/unit.js';
import type { Evaluated } from '../value/evaluated.js';

/** The keys of a sheet's rows: the fields they are of, and their codes row by row. */
export interface SheetKeys {
  readonly fields: readonly BookField[];
  readonly rows: readonly (readonly (string | number | null)[])[];
}

/** A sheet's column: what it gives, and its values a row each; none while only its kind is known. */
export interface SheetColumnValues {
  readonly kind: FormulaKind;
  readonly cells: readonly Evaluated[];
}

function fieldOf(name: string, kind: FormulaKind): BookField | null {
  const plainField = { name, unit: null, codes: null, labels: null, meaning: `The sheet’s column ${name}.` };
  switch (kind.kind) {
    case 'number':
      return { ...plainField, kind: 'number', unit: kind.unit.length === 0 ? null : describeUnit(kind.unit) };
    case 'text':
      return { ...plainField, kind: 'text', codes: kind.codes };
    case 'date':
      return { ...plainField, kind: 'date' };
    default:
      return null;
  }
}

function columnOf({ cells }: SheetColumnValues, kind: BookField['kind']): Column {
  if (kind === 'text') return textColumn(cells.map((cell) => (cell.kind === 'text' ? cell.text : null)));
  return numberColumn(
    cells.map((cell) => (cell.kind === 'number' ? cell.value : cell.kind === 'date' ? cell.day : null)),
  );
}

function keyColumn({ rows }: SheetKeys, at: number, kind: BookField['kind']): Column {
  const values = rows.map((row) => row[at] ?? null);
  if (kind === 'text') return textColumn(values.map((value) => (value === null ? null : String(value))));
  return numberColumn(values.map((value) => (typeof value === 'number' ? value : null)));
}

/** A sheet as a table of records, a row a group, so that `where` and `here` work on it; its rows belong to no station-day. */
export function sheetTable(name: string, keys: SheetKeys, columns: ReadonlyMap<string, SheetColumnValues>): BookTable {
  // A wait that groups rows does so by how it ended, which is a text.
  const keyFields = keys.fields.map((field): BookField => (field.kind === 'wait' ? { ...field, kind: 'text' } : field));
  const valueFields = [...columns].map(([column, { kind }]) => fieldOf(column, kind)).filter((field) => field !== null);
  const fields = new Map([...valueFields, ...keyFields].map((field) => [field.name, field]));
  const made = new Map<string, Column>();
  const make = (wanted: string): Column => {
    const field = fields.get(wanted);
    if (field === undefined) throw new Error(`the sheet ${name} has no ${wanted}`);
    const at = keyFields.findIndex((key) => key.name === wanted);
    return at < 0 ? columnOf(columns.get(wanted)!, field.kind) : keyColumn(keys, at, field.kind);
  };
  return {
    name,
    row: `one row of the sheet ${name}`,
    counted: 'rows',
    rowCount: keys.rows.length,
    fields,
    column: (wanted) => {
      const column = made.get(wanted) ?? make(wanted);
      made.set(wanted, column);
      return column;
    },
    clusterOf: null,
    origin: null,
  };
}
