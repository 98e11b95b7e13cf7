import type { Evaluation } from '../context.js';
import type { Environment } from '../environment.js';
import type { FormulaKind } from '../kind.js';
import type { Mistake } from '../place.js';
import type { RowValues } from '../rows/row-values.js';
import type { Unit } from '../unit/unit.js';
import type { SelectedRows } from '../value/census.js';
import type { Evaluated, NumberValue, SheetValue } from '../value/evaluated.js';
import type { EachNumber } from '../value/lift.js';

/** What an argument may be: rows, a field (or something made of fields) of rows, or a single value. */
export type Takes =
  | 'rows'
  | 'number field'
  | 'number or wait field'
  | 'wait field'
  | 'date field'
  | 'any field'
  | 'sheet column'
  /** Keys of the sheet that the formula stands in: none, or several one after the other; always the last argument. */
  | 'sheet key'
  | 'number'
  | 'truth'
  | 'text'
  | 'date'
  | 'value';

/** One argument as a reference page says it. */
export interface ArgumentDeclaration {
  readonly name: string;
  readonly takes: Takes;
}

/** What the reader of a formula must know of a function. */
export interface FunctionWords {
  readonly name: string;
  readonly arguments: readonly ArgumentDeclaration[];
  /** What comes back, with its unit. */
  readonly gives: string;
  /** What it means, as a sentence or two. */
  readonly meaning: string;
  readonly example: string;
}

/** A function of numbers that works on single values, on every row and on every resample alike. */
export interface EachFunction extends FunctionWords {
  readonly works: 'on each';
  /** Whether the last argument may be repeated. */
  readonly more: boolean;
  readonly each: EachNumber;
  /** The same for texts and dates, where it works on them too; null for missing. */
  readonly choice?: (values: readonly PlainValue[]) => PlainValue;
}

/** A text, a number, a date as days since 1970-01-01, a truth as 1 or 0, or null for missing. */
export type PlainValue = string | number | null;

/** A function of single texts, dates or numbers, worked out for single values and for every row; missing makes missing. */
export interface PlainFunction extends FunctionWords {
  readonly works: 'on values';
  readonly more: boolean;
  readonly result: FormulaKind;
  readonly each: (...values: readonly Exclude<PlainValue, null>[]) => PlainValue;
}

/** An argument as the checker knows it. */
export interface CheckedArgument {
  readonly kind: FormulaKind;
  /** The number itself where one is written out. */
  readonly written: number | null;
  /** What the rows' table is counted in; plain for a single value. */
  readonly counted: Unit;
}

/** What is wrong with one of the arguments. */
export interface ArgumentMistake extends Mistake {
  readonly argument: number;
}

/** A sheet's rows, and what one of its columns holds in each. */
export interface ColumnGiven {
  readonly sheet: SheetValue;
  /** The rows asked of, by their number in the sheet. */
  readonly rows: Uint32Array;
  /** The column's values in those rows; none where only the rows are asked for. */
  readonly values: readonly Evaluated[];
  readonly unit: Unit;
  /** The number of the row whose cell is being computed, where the sheet is the formula's own. */
  readonly own: number | null;
  /** Keys of the sheet within which the rows are gone through; none where all are. */
  readonly within: readonly string[];
  /** What decided which rows are taken, and other records could have made otherwise. */
  readonly decidedBy: readonly string[];
  readonly cautions: readonly string[];
}

/** An argument as the function works on it. */
export type GivenArgument =
  | { readonly given: 'rows'; readonly selected: SelectedRows }
  /** `drawnValues` are those of the rows that a threshold decides anew, where one does. */
  | {
      readonly given: 'field';
      readonly selected: SelectedRows;
      readonly values: RowValues;
      readonly drawnValues?: RowValues;
    }
  | { readonly given: 'column'; readonly column: ColumnGiven }
  /** `written` for a number written out, which takes the unit that is asked for. */
  | { readonly given: 'value'; readonly value: NumberValue; readonly written: boolean };

/** A function of rows, or of whole figures, that gives a single value. */
export interface WholeFunction extends FunctionWords {
  readonly works: 'on the whole';
  /** Whether its resamples take rows anew that a threshold from records decides; no where absent. */
  readonly drawsRowsAgain?: boolean;
  readonly kindOf: (checked: readonly CheckedArgument[]) => FormulaKind | ArgumentMistake;
  readonly evaluate: (given: readonly GivenArgument[], evaluation: Evaluation) => Evaluated;
  /** The same over a sheet's column in place of a field of records, where it works on one. */
  readonly overSheet?: (column: ColumnGiven, environment: Environment, given: readonly GivenArgument[]) => Evaluated;
}

/** A function as the checker, the evaluation and a reference page know it. */
export type FunctionDeclaration = EachFunction | PlainFunction | WholeFunction;

/** The rows given as an argument. */
export function rowsGiven(given: GivenArgument | undefined): SelectedRows {
  if (given?.given !== 'rows') throw new Error('rows were not checked');
  return given.selected;
}

/** The field given as an argument, with its rows. */
export function fieldGiven(given: GivenArgument | undefined): Extract<GivenArgument, { given: 'field' }> {
  if (given?.given !== 'field') throw new Error('a field was not checked');
  return given;
}

/** The number given as an argument. */
export function numberGiven(given: GivenArgument | undefined): Extract<GivenArgument, { given: 'value' }> {
  if (given?.given !== 'value') throw new Error('a number was not checked');
  return given;
}
