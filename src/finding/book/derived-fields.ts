import type { BookField } from '../../record/book.js';
import { yesNo } from '../../record/codes.js';
import type { CodeArray, NumberColumn, TextColumn } from '../../record/column.js';

/** A derived text field with its values in showing order. */
export function codedField(name: string, codes: readonly string[], meaning: string): BookField {
  return { name, kind: 'text', unit: null, codes, labels: null, meaning };
}

/** A derived number field; the unit in words, null for none. */
export function numberField(name: string, unit: string | null, meaning: string): BookField {
  return { name, kind: 'number', unit, codes: null, labels: null, meaning };
}

const yesNoCodes = yesNo.codes.map(({ code }) => code);

/** The dictionary codes of a yes-or-no column; 0 is missing, as everywhere. */
export const answer = { missing: 0, yes: 1, no: 2 } as const;

/** A derived yes-or-no field. */
export function yesNoField(name: string, meaning: string): BookField {
  return codedField(name, yesNoCodes, meaning);
}

/** A text column over a fixed list of values: 0 is missing, 1 the first. At most 255 values. */
export function codedColumn(values: readonly string[], codes: Uint8Array): TextColumn {
  return { kind: 'text', codes, dictionary: ['', ...values] };
}

/** A yes-or-no column from answers. */
export function yesNoColumn(answers: Uint8Array): TextColumn {
  return codedColumn(yesNoCodes, answers);
}

/** A number column filled row by row; null from `valueAt` is missing. */
export function numbersByRow(rowCount: number, valueAt: (row: number) => number | null): NumberColumn {
  const values = new Float64Array(rowCount);
  let missing: Uint8Array | null = null;
  for (let row = 0; row < rowCount; row++) {
    const value = valueAt(row);
    if (value === null) {
      missing ??= new Uint8Array(rowCount);
      missing[row] = 1;
    } else values[row] = value;
  }
  return { kind: 'number', values, missing };
}

/** One code a row, looked up by the code that another column has there. */
export function translateCodes(codes: CodeArray, byCode: readonly number[]): Uint8Array {
  const translated = new Uint8Array(codes.length);
  for (let row = 0; row < codes.length; row++) translated[row] = byCode[codes[row]!]!;
  return translated;
}
