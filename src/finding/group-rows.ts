import { type BookTable, waitEnding } from '../record/book.js';
import { byNaturalOrder } from './natural-order.js';

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
  readonly values: readonly (string | number | null)[];
  readonly rankOf: Uint32Array;
}

/** Numbers no further apart than this are told apart in an array that is cleared each time. */
const mostNarrow = 10_000;

const endings = Object.keys(waitEnding);

/** Each row's value as a code of some texts, 0 for missing, and the order in which the texts are shown. */
interface Coded {
  readonly codes: ArrayLike<number>;
  readonly texts: readonly string[];
  readonly order: readonly string[];
}

function textRanks({ codes, texts, order }: Coded, rows: Uint32Array): Ranks {
  const seen = new Uint8Array(texts.length);
  for (let at = 0; at < rows.length; at++) seen[codes[rows[at]!]!] = 1;
  const place = new Map(order.map((code, index) => [code, index]));
  const present = texts.map((_, code) => code).filter((code) => seen[code] === 1);
  present.sort((one, other) => {
    if (one === 0 || other === 0) return one === 0 ? (other === 0 ? 0 : 1) : -1;
    const [oneAt, otherAt] = [place.get(texts[one]!) ?? order.length, place.get(texts[other]!) ?? order.length];
    return oneAt - otherAt || byNaturalOrder(texts[one]!, texts[other]!);
  });
  const rankByCode = new Uint32Array(texts.length);
  present.forEach((code, rank) => {
    rankByCode[code] = rank;
  });
  const rankOf = new Uint32Array(rows.length);
  for (let at = 0; at < rows.length; at++) rankOf[at] = rankByCode[codes[rows[at]!]!]!;
  return { values: present.map((code) => (code === 0 ? null : texts[code]!)), rankOf };
}

function numberRanks(values: ArrayLike<number>, missing: Uint8Array | null, rows: Uint32Array): Ranks {
  const own = new Float64Array(rows.length);
  let anyMissing = false;
  for (let at = 0; at < rows.length; at++) {
    const row = rows[at]!;
    const isMissing = missing !== null && missing[row] === 1;
    own[at] = isMissing ? Number.NaN : values[row]!;
    anyMissing ||= isMissing;
  }
  const { distinct, placeOf } = narrowPlaces(own) ?? widePlaces(own);
  return { values: anyMissing ? [...distinct, null] : distinct, rankOf: placeOf };
}

/** The distinct numbers among some, ascending, and the place of each among them; that of NaN is behind all others. */
interface Places {
  readonly distinct: number[];
  readonly placeOf: Uint32Array;
}

/** Whole numbers that lie near each other, such as years, told apart by where they stand in an array; else null. */
function narrowPlaces(numbers: Float64Array): Places | null {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let at = 0; at < numbers.length; at++) {
    const number = numbers[at]!;
    if (Number.isNaN(number)) continue;
    if (!Number.isInteger(number) || Object.is(number, -0)) return null;
    if (number < low) low = number;
    if (number > high) high = number;
  }
  if (high - low >= mostNarrow) return null;
  const places = new Uint32Array(high < low ? 0 : high - low + 1);
  for (let at = 0; at < numbers.length; at++) if (!Number.isNaN(numbers[at]!)) places[numbers[at]! - low] = 1;
  const distinct: number[] = [];
  for (let place = 0; place < places.length; place++) {
    if (places[place] === 0) continue;
    places[place] = distinct.length;
    distinct.push(low + place);
  }
  const placeOf = new Uint32Array(numbers.length);
  for (let at = 0; at < numbers.length; at++) {
    placeOf[at] = Number.isNaN(numbers[at]!) ? distinct.length : places[numbers[at]! - low]!;
  }
  return { distinct, placeOf };
}

function widePlaces(numbers: Float64Array): Places {
  const distinct = [...Float64Array.from(new Set(numbers.filter((number) => !Number.isNaN(number)))).sort()];
  const place = new Map(distinct.map((number, index) => [number, index]));
  const placeOf = new Uint32Array(numbers.length);
  for (let at = 0; at < numbers.length; at++) placeOf[at] = place.get(numbers[at]!) ?? distinct.length;
  return { distinct, placeOf };
}

function ranksOf(table: BookTable, field: string, rows: Uint32Array): Ranks {
  const column = table.column(field);
  switch (column.kind) {
    case 'text':
      return textRanks(
        { codes: column.codes, texts: column.dictionary, order: table.fields.get(field)?.codes ?? [] },
        rows,
      );
    case 'wait':
      return textRanks(
        { codes: column.ending.map((ending) => ending + 1), texts: ['', ...endings], order: endings },
        rows,
      );
    case 'number':
      return numberRanks(column.values, column.missing, rows);
  }
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
  const { keys, placeOf } = keysOf(fields.map((field) => ranksOf(table, field, rows)));
  const sizes = new Uint32Array(keys.length);
  for (let at = 0; at < placeOf.length; at++) sizes[placeOf[at]!]!++;
  const groups = keys.map((key, place) => ({ key, rows: new Uint32Array(sizes[place]!) }));
  const filled = new Uint32Array(keys.length);
  for (let at = 0; at < rows.length; at++) {
    const place = placeOf[at]!;
    groups[place]!.rows[filled[place]!++] = rows[at]!;
  }
  return groups;
}
