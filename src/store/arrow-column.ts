import {
  Column as ArrowColumn,
  batchType,
  dateDay,
  dictionary,
  float64,
  timestamp,
  uint8,
  uint16,
  uint32,
  utf8,
} from '@uwdata/flechette';
import type { CodeArray, Column, NumberColumn, TextColumn } from '../record/column.js';
import type { Field } from '../record/field.js';

/** The part of an Arrow batch that holds a column's values as they lie in the file. */
export interface ArrowBatch {
  readonly length: number;
  readonly nullCount: number;
  readonly validity: Uint8Array;
  readonly values: unknown;
  readonly offsets?: Int32Array;
  readonly dictionary?: { readonly data: readonly ArrowBatch[]; readonly length: number };
}

type ArrowType = Parameters<typeof batchType>[0];

const noBytes = new Uint8Array(0);

function batchOf(type: ArrowType, parts: object) {
  const Batch = batchType(type);
  return new Batch({ type, ...parts });
}

/** Arrow's bitmap of the values that are there: bit i of byte i / 8, from the lowest. */
function bitmapOf(length: number, isThere: (row: number) => boolean): { nullCount: number; validity: Uint8Array } {
  const validity = new Uint8Array(Math.ceil(length / 8));
  let there = 0;
  for (let row = 0; row < length; row++) {
    if (!isThere(row)) continue;
    validity[row >> 3] = validity[row >> 3]! | (1 << (row & 7));
    there++;
  }
  return there === length ? { nullCount: 0, validity: noBytes } : { nullCount: length - there, validity };
}

function arrowStrings(texts: readonly string[], type: ArrowType): ArrowColumn<string> {
  const encoded = texts.map((text) => Buffer.from(text, 'utf8'));
  const offsets = new Int32Array(texts.length + 1);
  for (const [index, bytes] of encoded.entries()) offsets[index + 1] = offsets[index]! + bytes.length;
  const parts = { length: texts.length, nullCount: 0, validity: noBytes, offsets, values: Buffer.concat(encoded) };
  return new ArrowColumn([batchOf(type, parts)], type);
}

/** A dictionary column in Arrow, its codes taken over as they are; code 0 is null when `zeroIsMissing`. */
export function arrowCodes(codes: CodeArray, texts: readonly string[], zeroIsMissing: boolean): ArrowColumn<unknown> {
  const strings = utf8();
  const indices = codes instanceof Uint8Array ? uint8() : codes instanceof Uint16Array ? uint16() : uint32();
  const type = dictionary(strings, indices);
  const there = zeroIsMissing ? bitmapOf(codes.length, (row) => codes[row] !== 0) : { nullCount: 0, validity: noBytes };
  const batch = batchOf(type, { length: codes.length, values: codes, ...there });
  return new ArrowColumn([batch.setDictionary(arrowStrings(texts, strings))], type);
}

/** A column of whole numbers from 0 up in Arrow. */
export function arrowWhole(values: Uint32Array): ArrowColumn<unknown> {
  const type = uint32();
  const parts = { length: values.length, nullCount: 0, validity: noBytes, values };
  return new ArrowColumn([batchOf(type, parts)], type);
}

function arrowNumbers(column: NumberColumn, field: Field): ArrowColumn<unknown> {
  const { values, missing } = column;
  const there =
    missing === null ? { nullCount: 0, validity: noBytes } : bitmapOf(values.length, (row) => missing[row] === 0);
  if (field.type === 'instant') {
    const type = timestamp(1, 'UTC');
    return new ArrowColumn([batchOf(type, { length: values.length, values: wide(values), ...there })], type);
  }
  const type = field.type === 'date' ? dateDay() : float64();
  return new ArrowColumn([batchOf(type, { length: values.length, values, ...there })], type);
}

/** Milliseconds as 64-bit integers, put together from halves, which is far quicker than number by number as BigInt. */
function wide(values: Float64Array | Int32Array): BigInt64Array {
  const halves = new Int32Array(values.length * 2);
  for (let row = 0; row < values.length; row++) {
    const high = Math.floor(values[row]! / 2 ** 32);
    halves[row * 2] = values[row]! - high * 2 ** 32;
    halves[row * 2 + 1] = high;
  }
  return new BigInt64Array(halves.buffer);
}

/** A column of records as an Arrow column: dates as Date32, moments as Timestamp (ms, UTC), texts as a dictionary. */
export function arrowColumn(column: Column, field: Field): ArrowColumn<unknown> {
  return column.kind === 'text' ? arrowCodes(column.codes, column.dictionary, true) : arrowNumbers(column, field);
}

/** The texts of an Arrow dictionary. */
function stringsOf(batch: ArrowBatch): readonly string[] {
  const bytes = batch.values as Uint8Array;
  const offsets = batch.offsets!;
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length);
  return Array.from({ length: batch.length }, (_, index) =>
    buffer.toString('utf8', offsets[index]!, offsets[index + 1]!),
  );
}

/** The codes and texts of an Arrow dictionary column, the codes where they lie in the file's bytes. */
export function textFromArrow(batch: ArrowBatch): TextColumn {
  const texts = batch.dictionary!.data.flatMap(stringsOf);
  return { kind: 'text', codes: batch.values as CodeArray, dictionary: texts };
}

function missingFrom(batch: ArrowBatch): Uint8Array | null {
  if (batch.nullCount === 0) return null;
  const missing = new Uint8Array(batch.length);
  for (let row = 0; row < batch.length; row++) missing[row] = 1 - ((batch.validity[row >> 3]! >> (row & 7)) & 1);
  return missing;
}

function millisecondsOf(values: BigInt64Array): Float64Array {
  const halves = new Int32Array(values.buffer, values.byteOffset, values.length * 2);
  const milliseconds = new Float64Array(values.length);
  for (let row = 0; row < values.length; row++) {
    milliseconds[row] = halves[row * 2 + 1]! * 2 ** 32 + (halves[row * 2]! >>> 0);
  }
  return milliseconds;
}

/** A column of records from an Arrow column, values where they lie in the file's bytes; only moments are copied. */
export function columnFromArrow(batch: ArrowBatch, field: Field): Column {
  switch (field.type) {
    case 'instant':
      return { kind: 'number', values: millisecondsOf(batch.values as BigInt64Array), missing: missingFrom(batch) };
    case 'date':
    case 'number':
    case 'integer':
      return { kind: 'number', values: batch.values as Float64Array | Int32Array, missing: missingFrom(batch) };
    default:
      return textFromArrow(batch);
  }
}
