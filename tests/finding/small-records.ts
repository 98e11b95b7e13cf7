import { type Column, numberColumn, textColumn } from '../../src/record/column.js';
import type { Field, TableDefinition, TableName } from '../../src/record/field.js';
import type { ImportSum } from '../../src/record/file-sum.js';
import type { Records, RecordTable } from '../../src/record/records.js';
import { tables } from '../../src/record/tables.js';

/** A record as it would be written down: dates as `2025-06-01`, instants as ISO text with `Z`. */
export type SmallRow = Readonly<Record<string, string | number | null>>;

function numeric(field: Field, value: string | number | null | undefined): number | null {
  if (value === null || value === undefined) return null;
  if (typeof value === 'number') return value;
  const moment = Date.parse(value);
  if (Number.isNaN(moment)) throw new Error(`${value} is no moment for ${field.name}`);
  return field.type === 'date' ? moment / 86_400_000 : moment;
}

function columnOf(field: Field, rows: readonly SmallRow[]): Column {
  const isNumber = ['number', 'integer', 'date', 'instant'].includes(field.type);
  if (isNumber) return numberColumn(rows.map((row) => numeric(field, row[field.name])));
  return textColumn(rows.map((row) => (row[field.name] ?? null) as string | null));
}

function tableOf(definition: TableDefinition, rows: readonly SmallRow[]): RecordTable {
  for (const row of rows) {
    const unknown = Object.keys(row).find((name) => !definition.fields.some((field) => field.name === name));
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

/** Records from a few rows; tables not named have none. */
export function smallRecords(rows: Partial<Record<TableName, readonly SmallRow[]>>): Records {
  return Object.fromEntries(
    tables.map((definition) => [definition.name, tableOf(definition, rows[definition.name] ?? [])]),
  ) as Record<TableName, RecordTable>;
}

/** An import of no files, told up to a moment. */
export function smallSum(asOf: string | null, more: Partial<ImportSum> = {}): ImportSum {
  return {
    files: [],
    definitionChanges: [],
    asOf: asOf === null ? null : Date.parse(asOf),
    fingerprint: '0'.repeat(64),
    ...more,
  };
}

export const elkPoint: SmallRow = {
  station: 'elk',
  name: 'Elk Point',
  setting: 'launch',
  time_zone: 'America/Denver',
};
export const pineGate: SmallRow = {
  station: 'pine',
  name: 'Pine Gate',
  setting: 'roadside',
  time_zone: 'America/Los_Angeles',
};

/** A full inspection at Elk Point at 18:00 UTC on 1 June 2025 with the named differences. */
export function inspection(number: string, more: SmallRow = {}): SmallRow {
  return {
    inspection: number,
    station: 'elk',
    started_at: '2025-06-01T18:00Z',
    direction: 'arriving',
    extent: 'full',
    watercraft_type: 'open motorboat',
    outcome: 'cleared',
    ...more,
  };
}

/** A look at one part: its state, or `mussels` for a part fouled with attached mussels, some of them. */
export function look(
  number: string,
  component: string,
  state: 'absent' | 'not checked' | 'clean' | 'mussels',
  side = 'none',
  more: SmallRow = {},
): SmallRow {
  const found: SmallRow =
    state === 'mussels' ? { state: 'fouled', finding: 'mussels', stage: 'attached', abundance: 'some' } : { state };
  return { inspection: number, component, side, ...found, ...more };
}
