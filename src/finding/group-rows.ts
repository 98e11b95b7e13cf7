import type { BookTable } from '../record/book.js';
import { type GroupKey, keyCodes } from './key-codes.js';

export type { GroupKey } from './key-codes.js';

/** Rows that share the values of some fields. */
export interface RowGroup {
  readonly key: GroupKey;
  /** Ascending row numbers. */
  readonly rows: Uint32Array;
}

/** How rows were split before: several findings and sheets of a page split the same ones, which nobody changes. */
const split = new WeakMap<Uint32Array, { readonly table: BookTable; readonly by: Map<string, readonly RowGroup[]> }>();

/**
 * The rows split by the values of some fields, in showing order: the order of a field's codes, or else natural order;
 * missing is a group of its own, last. A wait is split by how it ended. Without fields, all rows are one group, which
 * is there even when it is empty. The same rows of a table split alike are given back again: they must not be changed.
 */
export function groupRows(table: BookTable, rows: Uint32Array, fields: readonly string[]): readonly RowGroup[] {
  if (fields.length === 0) return [{ key: [], rows }];
  let known = split.get(rows);
  if (known?.table !== table) {
    known = { table, by: new Map() };
    split.set(rows, known);
  }
  const name = fields.join(' ');
  const groups = known.by.get(name) ?? splitRows(table, rows, fields);
  known.by.set(name, groups);
  return groups;
}

function splitRows(table: BookTable, rows: Uint32Array, fields: readonly string[]): readonly RowGroup[] {
  const { codes, byRow, count, compare, keyFor } = keyCodes(table, rows, fields);
  const sizes = new Uint32Array(count);
  for (let at = 0; at < rows.length; at++) sizes[codes[byRow ? rows[at]! : at]!]!++;
  const present: number[] = [];
  for (let code = 0; code < count; code++) if (sizes[code]! > 0) present.push(code);
  present.sort(compare);
  // The lists stand one behind the other in one array.
  const nextOf = new Uint32Array(count);
  let filled = 0;
  for (const code of present) {
    nextOf[code] = filled;
    filled += sizes[code]!;
  }
  const all = new Uint32Array(rows.length);
  for (let at = 0; at < rows.length; at++) all[nextOf[codes[byRow ? rows[at]! : at]!]!++] = rows[at]!;
  return present.map((code) => ({ key: keyFor(code), rows: all.subarray(nextOf[code]! - sizes[code]!, nextOf[code]) }));
}
