import type { Evaluation } from '../context.js';
import type { FormulaKind } from '../kind.js';
import type { Mistake } from '../place.js';
import type { RowValues } from '../rows/row-values.js';
import type { Unit } from '../unit/unit.js';
import type { SelectedRows } from '../value/census.js';
import type { Evaluated, NumberValue } from '../value/evaluated.js';
import type { EachNumber } from '../value/lift.js';

/** What an argument may be: rows, a field (or something made of fields) of rows, or a single value. */
export type Takes = 'rows' | 'number field' | 'number or wait field' | 'wait field' | 'any field' | 'number' | 'truth';

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

/** An argument as the function works on it. */
export type GivenArgument =
  | { readonly given: 'rows'; readonly selected: SelectedRows }
  | { readonly given: 'field'; readonly selected: SelectedRows; readonly values: RowValues }
  /** `written` for a number written out, which takes the unit that is asked for. */
  | { readonly given: 'value'; readonly value: NumberValue; readonly written: boolean };

/** A function of rows, or of whole figures, that gives a single value. */
export interface WholeFunction extends FunctionWords {
  readonly works: 'on the whole';
  readonly kindOf: (checked: readonly CheckedArgument[]) => FormulaKind | ArgumentMistake;
  readonly evaluate: (given: readonly GivenArgument[], evaluation: Evaluation) => Evaluated;
}

/** A function as the checker, the evaluation and a reference page know it. */
export type FunctionDeclaration = EachFunction | WholeFunction;

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
