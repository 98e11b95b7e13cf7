import type { BookTable, WaitColumn } from '../../record/book.js';
import type { CodeArray, NumberColumn } from '../../record/column.js';
import { recordedUnit } from '../unit/read-unit.js';
import type { Unit } from '../unit/unit.js';
import type { Evaluated } from '../value/evaluated.js';

/** Numbers, dates (days) or moments (milliseconds), one a row; NaN where missing. */
export interface RowNumbers {
  readonly kind: 'number' | 'date' | 'instant';
  readonly values: Float64Array;
  readonly unit: Unit;
}

/** Texts as codes into a dictionary, one a row; code 0 where missing. */
export interface RowTexts {
  readonly kind: 'text';
  readonly codes: CodeArray;
  readonly dictionary: readonly string[];
}

/** Answers of a condition, one a row: no, yes or unknown. */
export interface RowAnswers {
  readonly kind: 'truth';
  readonly answers: Uint8Array;
}

/** Waits, one a row, as the book keeps them. */
export interface RowWaits extends WaitColumn {
  readonly kind: 'wait';
}

/** The same value for every row. */
export interface RowConstant {
  readonly kind: 'constant';
  readonly value: Evaluated;
}

/** What a part of a formula gives for each of some rows, in their order. */
export type RowValues = RowNumbers | RowTexts | RowAnswers | RowWaits | RowConstant;

/** Some rows of a table that a part of a formula is evaluated for. */
export interface RowsAsked {
  readonly table: BookTable;
  readonly rows: Uint32Array;
}

function gather<Values extends Float64Array | Uint8Array | Uint16Array | Uint32Array>(
  from: Values,
  rows: Uint32Array,
  into: Values,
): Values {
  for (let at = 0; at < rows.length; at += 1) into[at] = from[rows[at]!]!;
  return into;
}

/** Columns of numbers as conditions compare them, made once for a table. */
const wholes = new WeakMap<BookTable, Map<string, Float64Array>>();

function wholeNumbers(table: BookTable, name: string, { values, missing }: NumberColumn): Float64Array {
  if (missing === null && values instanceof Float64Array) return values;
  const ofTable = wholes.get(table) ?? new Map<string, Float64Array>();
  wholes.set(table, ofTable);
  const known = ofTable.get(name);
  if (known !== undefined) return known;
  const whole = Float64Array.from(values);
  if (missing !== null) for (let row = 0; row < whole.length; row += 1) if (missing[row] === 1) whole[row] = Number.NaN;
  ofTable.set(name, whole);
  return whole;
}

/** The values of a field at some rows; the book's own arrays where all rows are asked for, so they must not be changed. */
export function fieldValues(table: BookTable, name: string, rows: Uint32Array): RowValues {
  const field = table.fields.get(name)!;
  const column = table.column(name);
  const all = rows.length === table.rowCount;
  if (column.kind === 'text') {
    const { codes, dictionary } = column;
    if (all) return { kind: 'text', codes, dictionary };
    if (codes instanceof Uint8Array) {
      return { kind: 'text', codes: gather(codes, rows, new Uint8Array(rows.length)), dictionary };
    }
    if (codes instanceof Uint16Array) {
      return { kind: 'text', codes: gather(codes, rows, new Uint16Array(rows.length)), dictionary };
    }
    return { kind: 'text', codes: gather(codes, rows, new Uint32Array(rows.length)), dictionary };
  }
  if (column.kind === 'wait') {
    const minutes = all ? column.minutes : gather(column.minutes, rows, new Float64Array(rows.length));
    const ending = all ? column.ending : gather(column.ending, rows, new Uint8Array(rows.length));
    return { kind: 'wait', minutes, ending };
  }
  const recorded = wholeNumbers(table, name, column);
  const values = all ? recorded : gather(recorded, rows, new Float64Array(rows.length));
  const kind = field.kind === 'date' || field.kind === 'instant' ? field.kind : 'number';
  return { kind, values, unit: recordedUnit(field.unit) };
}
