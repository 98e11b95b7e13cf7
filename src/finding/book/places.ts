import { textAt } from '../../record/column.js';
import type { TableName } from '../../record/field.js';
import type { Records } from '../../record/records.js';
import { textOf } from './columns-of.js';

/** The keys that references may have, in the order of their table, and the names shown for them. */
export interface KeyNames {
  /** Null where the table has no rows, so that any text may stand. */
  readonly codes: readonly string[] | null;
  readonly labels: ReadonlyMap<string, string> | null;
}

const keyAndName: Partial<Record<TableName, { readonly key: string; readonly name: string | null }>> = {
  stations: { key: 'station', name: 'name' },
  waterbodies: { key: 'waterbody', name: 'name' },
  wash_units: { key: 'unit', name: null },
};

const anyText: KeyNames = { codes: null, labels: null };

/** The keys and shown names of a table that others refer to; where a key has several rows, its last name is shown. */
export function keyNames(records: Records, to: TableName): KeyNames {
  const naming = keyAndName[to];
  const table = records[to];
  if (naming === undefined || table.rowCount === 0) return anyText;
  const keys = textOf(table, naming.key);
  const names = naming.name === null ? null : textOf(table, naming.name);
  const labels = new Map<string, string>();
  for (let row = 0; row < table.rowCount; row++) {
    const key = textAt(keys, row);
    if (key !== null) labels.set(key, (names === null ? null : textAt(names, row)) ?? key);
  }
  return { codes: [...labels.keys()], labels: names === null ? null : labels };
}
