import type { BookTable } from '../record/book.js';
import type { NumberColumn } from '../record/column.js';
import { type FieldCodes, fieldCodes } from './field-codes.js';

/** What the rows of a group share: a value a field, null for missing. Dates and instants are numbers, as recorded. */
export type GroupKey = readonly (string | number | null)[];

/** Rows that share the values of some fields. */
export interface RowGroup {
  readonly key: GroupKey;
  /** Ascending row numbers. */
  readonly rows: Uint32Array;
}

/** A field's values among some rows in showing order, missing last, and the place of each row's value among them. */
interface Ranks {
  readonly values: GroupKey;
  readonly rankOf: Uint32Array;
}

/** The codes among some that are there, in showing order, and the place of each among them. */
function codesInOrder(counts: Uint32Array, { compare }: FieldCodes): { present: number[]; placeOf: Uint32Array } {
  const present: number[] = [];
  for (let code = 0; code < counts.length; code++) if (counts[code]! > 0) present.push(code);
  present.sort(compare);
  const placeOf = new Uint32Array(counts.length);
  present.forEach((code, place) => {
    placeOf[code] = place;
  });
  return { present, placeOf };
}

function countCodes({ codes, count }: FieldCodes, rows: Uint32Array): Uint32Array {
  const counts = new Uint32Array(count);
  for (let at = 0; at < rows.length; at++) counts[codes[rows[at]!]!]!++;
  return counts;
}

function codeRanks(coded: FieldCodes, rows: Uint32Array): Ranks {
  const { codes, valueFor } = coded;
  const { present, placeOf } = codesInOrder(countCodes(coded, rows), coded);
  const rankOf = new Uint32Array(rows.length);
  for (let at = 0; at < rows.length; at++) rankOf[at] = placeOf[codes[rows[at]!]!]!;
  return { values: present.map(valueFor), rankOf };
}

/** Numbers that lie too far apart for codes. */
function wideRanks({ values, missing }: NumberColumn, rows: Uint32Array): Ranks {
  const numbers = new Float64Array(rows.length);
  for (let at = 0; at < rows.length; at++) numbers[at] = missing?.[rows[at]!] === 1 ? Number.NaN : values[rows[at]!]!;
  const distinct = [...Float64Array.from(new Set(numbers.filter((number) => !Number.isNaN(number)))).sort()];
  const place = new Map(distinct.map((number, index) => [number, index]));
  const rankOf = new Uint32Array(rows.length);
  let anyMissing = false;
  for (let at = 0; at < rows.length; at++) {
    const known = place.get(numbers[at]!);
    anyMissing ||= known === undefined;
    rankOf[at] = known ?? distinct.length;
  }
  return { values: anyMissing ? [...distinct, null] : distinct, rankOf };
}

function ranksOf(table: BookTable, field: string, rows: Uint32Array): Ranks {
  const coded = fieldCodes(table, field);
  return coded === null ? wideRanks(table.column(field) as NumberColumn, rows) : codeRanks(coded, rows);
}

/** Numbers below this are told apart by where they stand in an array, which is far quicker than a map. */
const mostPlaces = 1_000_000;

/** The distinct whole numbers among some, ascending, and the place of each among them; all are below `limit`. */
function distinctPlaces(numbers: Float64Array, limit: number): { distinct: number[]; placeOf: Uint32Array } {
  const placeOf = new Uint32Array(numbers.length);
  if (limit > mostPlaces) {
    const distinct = [...Float64Array.from(new Set(numbers)).sort()];
    const place = new Map(distinct.map((number, index) => [number, index]));
    for (let at = 0; at < numbers.length; at++) placeOf[at] = place.get(numbers[at]!)!;
    return { distinct, placeOf };
  }
  const places = new Uint32Array(limit);
  for (let at = 0; at < numbers.length; at++) places[numbers[at]!] = 1;
  const distinct: number[] = [];
  for (let number = 0; number < limit; number++) {
    if (places[number] === 0) continue;
    places[number] = distinct.length;
    distinct.push(number);
  }
  for (let at = 0; at < numbers.length; at++) placeOf[at] = places[numbers[at]!]!;
  return { distinct, placeOf };
}

/** What the ranks of some fields make together: the keys that rows have, in showing order, and the place of each row's among them. */
function keysOf(ranks: readonly Ranks[]): { readonly keys: readonly GroupKey[]; readonly placeOf: Uint32Array } {
  const [first, ...more] = ranks as [Ranks, ...Ranks[]];
  if (more.length === 0) return { keys: first.values.map((value) => [value]), placeOf: first.rankOf };
  const combined = Float64Array.from(first.rankOf);
  for (const { values, rankOf } of more) {
    for (let at = 0; at < combined.length; at++) combined[at] = combined[at]! * values.length + rankOf[at]!;
  }
  const limit = ranks.reduce((product, { values }) => product * values.length, 1);
  const { distinct, placeOf } = distinctPlaces(combined, limit);
  return { keys: distinct.map((number) => keyOf(number, ranks)), placeOf };
}

function keyOf(combined: number, ranks: readonly Ranks[]): GroupKey {
  const key: (string | number | null)[] = [];
  let rest = combined;
  for (const { values } of ranks.toReversed()) {
    key.unshift(values[rest % values.length]!);
    rest = Math.floor(rest / values.length);
  }
  return key;
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
  const [only] = fields;
  const coded = fields.length === 1 ? fieldCodes(table, only!) : null;
  if (coded !== null) return splitByCode(coded, rows);
  const { keys, placeOf } = keysOf(fields.map((field) => ranksOf(table, field, rows)));
  const sizes = new Uint32Array(keys.length);
  for (let at = 0; at < placeOf.length; at++) sizes[placeOf[at]!]!++;
  const { all, starts, listAt } = roomFor(sizes);
  for (let at = 0; at < rows.length; at++) all[starts[placeOf[at]!]!++] = rows[at]!;
  return keys.map((key, place) => ({ key, rows: listAt(place) }));
}

function splitByCode(coded: FieldCodes, rows: Uint32Array): readonly RowGroup[] {
  const { codes, valueFor } = coded;
  const counts = countCodes(coded, rows);
  const { present, placeOf } = codesInOrder(counts, coded);
  const { all, starts, listAt } = roomFor(Uint32Array.from(present, (code) => counts[code]!));
  for (let at = 0; at < rows.length; at++) all[starts[placeOf[codes[rows[at]!]!]!]!++] = rows[at]!;
  return present.map((code, place) => ({ key: [valueFor(code)], rows: listAt(place) }));
}

/** Room for lists of these sizes, one behind the other in one array, where each starts, and each by itself. */
function roomFor(sizes: Uint32Array) {
  const ends = sizes.slice();
  for (let place = 1; place < ends.length; place++) ends[place]! += ends[place - 1]!;
  const starts = ends.map((end, place) => end - sizes[place]!);
  const all = new Uint32Array(ends.at(-1) ?? 0);
  return { all, starts, listAt: (place: number) => all.subarray(ends[place]! - sizes[place]!, ends[place]) };
}
