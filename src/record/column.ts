import type { DictionaryBytes } from './dictionary-bytes.js';

/** The integer arrays that dictionary codes live in; the narrowest that fits the dictionary is used. */
export type CodeArray = Uint8Array | Uint16Array | Uint32Array;

/**
 * Text, codes, references and pseudonyms: one dictionary code a row. Code 0 is missing, and `dictionary[0]` is the empty
 * text that stands for it; every other code indexes its text.
 */
export interface TextColumn {
  readonly kind: 'text';
  readonly codes: CodeArray;
  readonly dictionary: readonly string[];
  /** The same texts as bytes, where they were read and not written down: a store writes them as they lie. */
  readonly texts?: DictionaryBytes;
}

/**
 * Numbers (as they are), dates (days since 1970-01-01) and instants (milliseconds since 1970-01-01T00:00Z).
 * `missing[row]` is 1 where there is no value; null when every row has one. The value under a missing mark is 0.
 */
export interface NumberColumn {
  readonly kind: 'number';
  readonly values: Float64Array | Int32Array;
  readonly missing: Uint8Array | null;
}

/** The values of one field, one a row. */
export type Column = TextColumn | NumberColumn;

/** The text at a row, or null where it is missing. */
export function textAt(column: TextColumn, row: number): string | null {
  const code = column.codes[row]!;
  return code === 0 ? null : column.dictionary[code]!;
}

/** The number at a row, or null where it is missing. */
export function numberAt(column: NumberColumn, row: number): number | null {
  return column.missing !== null && column.missing[row] === 1 ? null : column.values[row]!;
}

/** An array of codes for a dictionary of that size. */
export function codeArray(length: number, dictionarySize: number): CodeArray {
  if (dictionarySize <= 0x100) return new Uint8Array(length);
  if (dictionarySize <= 0x10000) return new Uint16Array(length);
  return new Uint32Array(length);
}

/** A text column from texts, null for missing; codes are numbered in order of first appearance. */
export function textColumn(texts: readonly (string | null)[]): TextColumn {
  const dictionary: string[] = [''];
  const codeOf = new Map<string, number>();
  const wide = new Uint32Array(texts.length);
  texts.forEach((text, row) => {
    if (text === null) return;
    let code = codeOf.get(text);
    if (code === undefined) {
      code = dictionary.length;
      dictionary.push(text);
      codeOf.set(text, code);
    }
    wide[row] = code;
  });
  const codes = codeArray(texts.length, dictionary.length);
  codes.set(wide);
  return { kind: 'text', codes, dictionary };
}

/** A number column from numbers, null for missing. */
export function numberColumn(numbers: readonly (number | null)[]): NumberColumn {
  const values = new Float64Array(numbers.length);
  const missing = new Uint8Array(numbers.length);
  let anyMissing = false;
  numbers.forEach((number, row) => {
    if (number === null) {
      missing[row] = 1;
      anyMissing = true;
    } else values[row] = number;
  });
  return { kind: 'number', values, missing: anyMissing ? missing : null };
}
