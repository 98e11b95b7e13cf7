import { type Column, numberColumn, textColumn } from '../../record/column.js';
import type { Field, TableDefinition, TableName } from '../../record/field.js';
import type { Records, RecordTable } from '../../record/records.js';
import { tables } from '../../record/tables.js';

/** A record as it would be written down: dates as `2025-06-01`, instants as ISO text with `Z`. */
export type WrittenRow = Readonly<Record<string, string | number | null>>;

function numeric(field: Field, value: string | number | null | undefined): number | null {
  if (value === null || value === undefined) return null;
  if (typeof value === 'number') return value;
  const moment = Date.parse(value);
  if (Number.isNaN(moment)) throw new Error(`${value} is no moment for ${field.name}`);
  return field.type === 'date' ? moment / 86_400_000 : moment;
}

function columnOf(field: Field, rows: readonly WrittenRow[]): Column {
  const isNumber = ['number', 'integer', 'date', 'instant'].includes(field.type);
  if (isNumber) return numberColumn(rows.map((row) => numeric(field, row[field.name])));
  return textColumn(rows.map((row) => (row[field.name] ?? null) as string | null));
}

function tableOf(definition: TableDefinition, rows: readonly WrittenRow[]): RecordTable {
  const known = new Set(definition.fields.map(({ name }) => name));
  for (const row of rows) {
    const unknown = Object.keys(row).find((name) => !known.has(name));
    if (unknown !== undefined) throw new Error(`${definition.name} has no field ${unknown}`);
  }
  return {
    definition,
    rowCount: rows.length,
    columns: new Map(definition.fields.map((field) => [field.name, columnOf(field, rows)])),
    origin: {
      files: [`${definition.name}.csv`],
      fileOf: new Uint8Array(rows.length),
      lineOf: Uint32Array.from(rows, (_, row) => row + 2),
    },
  };
}

/** Records from a few rows; tables not named have none. Throws for a field that a table does not have. */
export function recordsOfRows(rows: Partial<Record<TableName, readonly WrittenRow[]>>): Records {
  return Object.fromEntries(
    tables.map((definition) => [definition.name, tableOf(definition, rows[definition.name] ?? [])]),
  ) as Record<TableName, RecordTable>;
}
