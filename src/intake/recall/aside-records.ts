import { type Column, numberColumn, textColumn } from '../../record/column.js';
import type { Field, TableDefinition, TableName } from '../../record/field.js';
import type { Records, RecordTable } from '../../record/records.js';
import { tables } from '../../record/tables.js';
import { type Draft, noDay } from '../draft.js';
import type { FileReading } from '../read-file.js';

interface AsideRow {
  readonly part: number;
  readonly draft: Draft;
  readonly row: number;
  /** The column of the checklist that the record comes from; null for a row of the table itself. */
  readonly column: number | null;
}

type Value = string | number | null;

function* asideRows(table: TableDefinition, readings: readonly FileReading[]): Iterable<AsideRow> {
  let part = -1;
  for (const { draft } of readings) {
    const isFolded = draft.fold?.table === table;
    if (!isFolded && draft.table !== table) continue;
    part++;
    const columns = isFolded ? draft.fold!.columns.map((_, column) => column) : [null];
    for (let row = 0; row < draft.rowCount; row++) {
      if (draft.aside[row] === 1) for (const column of columns) yield { part, draft, row, column };
    }
  }
}

function foldedValue(field: Field, { draft, row }: AsideRow, column: number): Value {
  const fold = draft.fold!;
  if (field.name === 'component' || field.name === 'side') return fold.columns[column]![field.name];
  const said = [...fold.values.values()][draft.folded[row * fold.columns.length + column]! - 1];
  return said?.get(field.name) ?? null;
}

function valueAt(field: Field, aside: AsideRow): Value {
  const { draft, row, column } = aside;
  if (column !== null) return foldedValue(field, aside, column);
  const drafted = draft.columns.get(field.name);
  if (drafted === undefined) return null;
  const value = drafted.values[row]!;
  if (drafted.interner !== null) return value === 0 ? null : drafted.interner.textOf(value);
  if (field.type === 'code') return value === 0 ? null : field.codes.codes[value - 1]!.code;
  return Number.isNaN(value) || (field.type === 'date' && value === noDay) ? null : value;
}

function columnOf(field: Field, rows: readonly AsideRow[]): Column {
  const values = rows.map((row) => valueAt(field, row));
  if (!['number', 'integer', 'date', 'instant'].includes(field.type)) return textColumn(values as (string | null)[]);
  const numbers = numberColumn(values as (number | null)[]);
  return field.type === 'date' ? { ...numbers, values: Int32Array.from(numbers.values) } : numbers;
}

function asideTable(table: TableDefinition, readings: readonly FileReading[]): RecordTable {
  const rows = [...asideRows(table, readings)];
  const parts = readings.filter(({ draft }) => draft.table === table || draft.fold?.table === table);
  return {
    definition: table,
    rowCount: rows.length,
    columns: new Map(table.fields.map((field) => [field.name, columnOf(field, rows)])),
    origin: {
      files: parts.map(({ file }) => file),
      fileOf: Uint16Array.from(rows, ({ part }) => part),
      lineOf: Uint32Array.from(rows, ({ draft, row }) => draft.lines[row]!),
    },
  };
}

/**
 * The rows of all drafts that are set aside, as far as they could be read, in order of file and line: should what they
 * refer to come later, they need not be read again.
 */
export function asideRecords(readings: readonly FileReading[]): Records {
  const byName = tables.map((table): [TableName, RecordTable] => [table.name, asideTable(table, readings)]);
  return Object.fromEntries(byName) as Record<TableName, RecordTable>;
}
