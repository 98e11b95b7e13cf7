import { type BookTable, waitEnding } from '../record/book.js';
import type { NumberColumn } from '../record/column.js';
import { byNaturalOrder } from './natural-order.js';

/** The values of a field as small whole numbers, one a row, 0 for missing: by these rows are told apart in arrays. */
export interface FieldCodes {
  readonly codes: ArrayLike<number>;
  /** Every code is below it. */
  readonly count: number;
  /** Two codes in showing order: that of the field's codes, or else natural order; missing last. */
  readonly compare: (one: number, other: number) => number;
  readonly valueFor: (code: number) => string | number | null;
}

/** Numbers no further apart than this have codes. */
const mostNarrow = 10_000;

const endings = Object.keys(waitEnding);

const missing = 0;

function missingLast(compare: FieldCodes['compare']): FieldCodes['compare'] {
  return (one, other) => {
    if (one !== missing && other !== missing) return compare(one, other);
    return one === other ? 0 : one === missing ? 1 : -1;
  };
}

function textCodes(codes: ArrayLike<number>, texts: readonly string[], order: readonly string[]): FieldCodes {
  const places = new Map(order.map((text, place) => [text, place]));
  const placeOf = (code: number): number => places.get(texts[code]!) ?? order.length;
  return {
    codes,
    count: texts.length,
    compare: missingLast((one, other) => placeOf(one) - placeOf(other) || byNaturalOrder(texts[one]!, texts[other]!)),
    valueFor: (code) => (code === missing ? null : texts[code]!),
  };
}

/** Whole numbers that lie near each other, such as years and days; null for others. */
function numberCodes({ values, missing: isMissing }: NumberColumn): FieldCodes | null {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let row = 0; row < values.length; row++) {
    if (isMissing?.[row] === 1) continue;
    const value = values[row]!;
    if (!Number.isInteger(value) || Object.is(value, -0)) return null;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  if (high - low >= mostNarrow) return null;
  const codes = new Uint16Array(values.length);
  for (let row = 0; row < codes.length; row++) codes[row] = isMissing?.[row] === 1 ? missing : values[row]! - low + 1;
  return {
    codes,
    count: high < low ? 1 : high - low + 2,
    compare: missingLast((one, other) => one - other),
    valueFor: (code) => (code === missing ? null : low + code - 1),
  };
}

/** Codes made before: a page asks for those of the same few fields again and again. */
const known = new WeakMap<BookTable, Map<string, FieldCodes | null>>();

/** The codes of a field of a table, a wait by how it ended; null for numbers that lie too far apart. Nobody changes them. */
export function fieldCodes(table: BookTable, field: string): FieldCodes | null {
  const ofTable = known.get(table) ?? new Map<string, FieldCodes | null>();
  known.set(table, ofTable);
  const found = ofTable.get(field);
  if (found !== undefined) return found;
  const made = makeCodes(table, field);
  ofTable.set(field, made);
  return made;
}

function makeCodes(table: BookTable, field: string): FieldCodes | null {
  const column = table.column(field);
  switch (column.kind) {
    case 'text':
      return textCodes(column.codes, column.dictionary, table.fields.get(field)?.codes ?? []);
    case 'wait':
      return textCodes(
        column.ending.map((ending) => ending + 1),
        ['', ...endings],
        endings,
      );
    case 'number':
      return numberCodes(column);
  }
}
