import type { BookTable } from '../record/book.js';
import type { NumberColumn } from '../record/column.js';
import { type FieldCodes, fieldCodes } from './field-codes.js';

/** What the rows of a group share: a value a field, null for missing. Dates and instants are numbers, as recorded. */
export type GroupKey = readonly (string | number | null)[];

/** The values of some fields together as one code for each of some rows. */
export interface KeyCodes {
  readonly codes: ArrayLike<number>;
  /** Whether a code stands at its row; at the row's position among those asked otherwise. */
  readonly byRow: boolean;
  /** Every code is below it. */
  readonly count: number;
  /** Two codes in showing order. */
  readonly compare: (one: number, other: number) => number;
  readonly keyFor: (code: number) => GroupKey;
}

/** Codes below so many, or below so many for each row, are told apart by where they stand in an array. */
const mostCodes = { always: 10_000, aRow: 4 };

/** The codes of some fields, one at least, for some rows of a table: never many more than there are rows. */
export function keyCodes(table: BookTable, rows: Uint32Array, fields: readonly string[]): KeyCodes {
  const [first, ...more] = fields.map((field) => codesOf(table, field, rows)) as [KeyCodes, ...KeyCodes[]];
  const all = more.reduce((so, one) => {
    // Beyond whole numbers that are told apart: numbers of those that occur take less.
    const isExact = so.count * one.count <= Number.MAX_SAFE_INTEGER;
    return bothCodes(isExact ? so : renumbered(so, rows), one, rows);
  }, first);
  return all.count <= Math.max(mostCodes.always, mostCodes.aRow * rows.length) ? all : renumbered(all, rows);
}

function codesOf(table: BookTable, field: string, rows: Uint32Array): KeyCodes {
  const known = fieldCodes(table, field);
  const own = known ?? wideCodes(table.column(field) as NumberColumn, rows);
  return { ...own, byRow: known !== null, keyFor: (code) => [own.valueFor(code)] };
}

/** Codes of numbers that lie too far apart to have their own, by the rows' positions: their places in ascending order. */
function wideCodes({ values, missing }: NumberColumn, rows: Uint32Array): FieldCodes {
  const isThere = (row: number): boolean => missing?.[row] !== 1 && !Number.isNaN(values[row]);
  const numbers = Float64Array.from(rows.filter(isThere), (row) => values[row]!);
  const distinct = Float64Array.from(new Set(numbers)).sort();
  const codeOf = new Map(Array.from(distinct, (number, place) => [number, place + 1]));
  return {
    codes: Uint32Array.from(rows, (row) => (isThere(row) ? codeOf.get(values[row]!)! : 0)),
    count: distinct.length + 1,
    compare: (one, other) => (one === 0 || other === 0 ? other - one : one - other),
    valueFor: (code) => (code === 0 ? null : distinct[code - 1]!),
  };
}

/** The codes of two lists of fields as those of both together, the first of which comes first in order. */
function bothCodes(one: KeyCodes, other: KeyCodes, rows: Uint32Array): KeyCodes {
  const { count } = other;
  const codes = one.count * count <= 0x1_0000_0000 ? new Uint32Array(rows.length) : new Float64Array(rows.length);
  for (let at = 0; at < codes.length; at++) {
    codes[at] = one.codes[one.byRow ? rows[at]! : at]! * count + other.codes[other.byRow ? rows[at]! : at]!;
  }
  const first = (code: number): number => Math.floor(code / count);
  return {
    codes,
    byRow: false,
    count: one.count * count,
    compare: (a, b) => one.compare(first(a), first(b)) || other.compare(a % count, b % count),
    keyFor: (code) => [...one.keyFor(first(code)), ...other.keyFor(code % count)],
  };
}

/** The same keys with codes in order of first appearance, so that none is left out between them. */
function renumbered({ codes, byRow, compare, keyFor }: KeyCodes, rows: Uint32Array): KeyCodes {
  const numberOf = new Map<number, number>();
  const before: number[] = [];
  const numbers = new Uint32Array(rows.length);
  for (let at = 0; at < numbers.length; at++) {
    const code = codes[byRow ? rows[at]! : at]!;
    let number = numberOf.get(code);
    if (number === undefined) {
      number = before.push(code) - 1;
      numberOf.set(code, number);
    }
    numbers[at] = number;
  }
  return {
    codes: numbers,
    byRow: false,
    count: before.length,
    compare: (one, other) => compare(before[one]!, before[other]!),
    keyFor: (number) => keyFor(before[number]!),
  };
}
