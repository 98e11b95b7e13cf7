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
import { type CodeArray, type Column, codeArray, type NumberColumn, type TextColumn } from '../record/column.js';
import { DictionaryBytes } from '../record/dictionary-bytes.js';
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

interface Validity {
  readonly nullCount: number;
  readonly validity: Uint8Array;
}

const allThere: Validity = { nullCount: 0, validity: noBytes };

/** Arrow's bitmap of the values that are there: bit i of byte i / 8, from the lowest; one mark, 0 or another, means missing. */
function bitmapOf(marks: CodeArray, missing: number): Validity {
  if (missing === 0 && marks.indexOf(0) < 0) return allThere;
  const { length } = marks;
  const validity = new Uint8Array(Math.ceil(length / 8));
  let there = 0;
  for (let first = 0; first < length; first += 8) {
    const count = Math.min(8, length - first);
    let bits = 0;
    for (let bit = 0; bit < count; bit++) {
      if (marks[first + bit] === missing) continue;
      bits |= 1 << bit;
      there++;
    }
    validity[first >> 3] = bits;
  }
  return there === length ? allThere : { nullCount: length - there, validity };
}

function arrowStrings({ bytes, offsets, size }: DictionaryBytes, type: ArrowType): ArrowColumn<string> {
  const parts = { length: size, nullCount: 0, validity: noBytes, offsets, values: bytes };
  const column = new ArrowColumn<string>([batchOf(type, parts)], type);
  // A dictionary is decoded where it is put to use, and here no text of it is asked for.
  column.cache = () => [];
  return column;
}

interface UsedTexts {
  readonly codes: CodeArray;
  readonly texts: DictionaryBytes;
}

/** The codes and texts of a column that uses only few of many texts, such as references to a far longer table. */
function compacted(codes: CodeArray, texts: DictionaryBytes): UsedTexts {
  if (texts.size <= codes.length + 1) return { codes, texts };
  const used = new Map<number, number>([[0, 0]]);
  const numbers = codes.map((code) => {
    const number = used.get(code) ?? used.size;
    used.set(code, number);
    return number;
  });
  const narrow = codeArray(codes.length, used.size);
  narrow.set(numbers);
  return { codes: narrow, texts: texts.chosen(Uint32Array.from(used.keys())) };
}

function dictionaryColumn(codes: CodeArray, texts: DictionaryBytes, there: Validity): ArrowColumn<unknown> {
  const strings = utf8();
  const indices = codes instanceof Uint8Array ? uint8() : codes instanceof Uint16Array ? uint16() : uint32();
  const type = dictionary(strings, indices);
  const batch = batchOf(type, { length: codes.length, values: codes, ...there });
  return new ArrowColumn([batch.setDictionary(arrowStrings(texts, strings))], type);
}

/** A dictionary column in Arrow in which every code stands for a text; the codes are taken over as they are. */
export function arrowCodes(codes: CodeArray, texts: readonly string[]): ArrowColumn<unknown> {
  return dictionaryColumn(codes, DictionaryBytes.of(texts), allThere);
}

/** A column of whole numbers from 0 up in Arrow. */
export function arrowWhole(values: Uint32Array): ArrowColumn<unknown> {
  const type = uint32();
  const parts = { length: values.length, nullCount: 0, validity: noBytes, values };
  return new ArrowColumn([batchOf(type, parts)], type);
}

function arrowNumbers(column: NumberColumn, field: Field): ArrowColumn<unknown> {
  const { values, missing } = column;
  const there = missing === null ? allThere : bitmapOf(missing, 1);
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
  if (column.kind === 'number') return arrowNumbers(column, field);
  const { codes, texts } = compacted(column.codes, column.texts ?? DictionaryBytes.of(column.dictionary));
  return dictionaryColumn(codes, texts, bitmapOf(codes, 0));
}

/** The texts of an Arrow dictionary. */
function stringsOf(batch: ArrowBatch): readonly string[] {
  return new DictionaryBytes(batch.values as Uint8Array, batch.offsets!).texts;
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
