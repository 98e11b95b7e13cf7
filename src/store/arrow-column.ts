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

function arrowStrings(texts: readonly string[], type: ArrowType): ArrowColumn<string> {
  const joined = texts.join('');
  const values = Buffer.from(joined, 'utf8');
  // Plain letters are as many bytes, so that they need not be counted text by text.
  const bytesOf = values.length === joined.length ? (text: string) => text.length : Buffer.byteLength;
  const offsets = new Int32Array(texts.length + 1);
  for (let index = 0; index < texts.length; index++) offsets[index + 1] = offsets[index]! + bytesOf(texts[index]!);
  const column = new ArrowColumn<string>(
    [batchOf(type, { length: texts.length, nullCount: 0, validity: noBytes, offsets, values })],
    type,
  );
  // A dictionary is decoded where it is put to use, and here its texts are at hand.
  column.cache = () => texts as string[];
  return column;
}

/** The codes and texts of a column that uses only few of many texts, such as references to a far longer table. */
function compacted(codes: CodeArray, texts: readonly string[]): Pick<TextColumn, 'codes' | 'dictionary'> {
  if (texts.length <= codes.length + 1) return { codes, dictionary: texts };
  const used = new Map<number, number>([[0, 0]]);
  const dictionary = [texts[0]!];
  const numbers = codes.map((code) => {
    let number = used.get(code);
    if (number === undefined) {
      number = dictionary.length;
      used.set(code, number);
      dictionary.push(texts[code]!);
    }
    return number;
  });
  const narrow = codeArray(codes.length, dictionary.length);
  narrow.set(numbers);
  return { codes: narrow, dictionary };
}

function dictionaryColumn(codes: CodeArray, texts: readonly string[], there: Validity): ArrowColumn<unknown> {
  const strings = utf8();
  const indices = codes instanceof Uint8Array ? uint8() : codes instanceof Uint16Array ? uint16() : uint32();
  const type = dictionary(strings, indices);
  const batch = batchOf(type, { length: codes.length, values: codes, ...there });
  return new ArrowColumn([batch.setDictionary(arrowStrings(texts, strings))], type);
}

/** A dictionary column in Arrow in which every code stands for a text; the codes are taken over as they are. */
export function arrowCodes(codes: CodeArray, texts: readonly string[]): ArrowColumn<unknown> {
  return dictionaryColumn(codes, texts, allThere);
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
  const { codes, dictionary: texts } = compacted(column.codes, column.dictionary);
  return dictionaryColumn(codes, texts, bitmapOf(codes, 0));
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
