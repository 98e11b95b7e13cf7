import type { Problem } from '../../problem/problem.js';
import type { BookTable } from '../../record/book.js';
import type { Interval } from '../../statistic/estimate.js';
import type { FormulaKind } from '../kind.js';
import type { Unit } from '../unit/unit.js';
import type { CountedRecords } from './account.js';

/** An interval, or the reason why there is none; neither where none is due. */
export interface IntervalFound {
  readonly interval: Interval | null;
  readonly why: string | null;
  readonly cautions: readonly string[];
}

/**
 * What a number stands on. `given`: an input, a number written out, or made of those. `census`: counted or totalled
 * from records, and sums of those: what was recorded is all there is. `estimate`: says something about the process
 * behind the records, so that it carries an interval.
 */
export type Standing = 'given' | 'census' | 'estimate';

/** How many station-days the counts under a number come from: the fewest and the most of any one count. */
export interface ClusterSpread {
  readonly fewest: number;
  readonly most: number;
}

/** A number with its unit and all that an interval and a trace need. */
export interface NumberValue {
  readonly kind: 'number';
  /** Null where it is missing or not defined; `why` says so. */
  readonly value: number | null;
  readonly unit: Unit;
  readonly why: string | null;
  readonly standing: Standing;
  readonly numerator: number | null;
  readonly denominator: number | null;
  /** The table and rows, where the number is their plain count. */
  readonly counted: { readonly table: string; readonly rows: Uint32Array } | null;
  /** The counts that it is the share of, where it is one. */
  readonly shareOf: { readonly cases: NumberValue; readonly trials: NumberValue } | null;
  /** Its value in every shared resample (NaN where not defined), made when first asked for; null where it cannot change. */
  readonly draws: (() => Float64Array) | null;
  /** An interval by a method of its own, made when first asked for; null where only resamples give one. */
  readonly ownInterval: (() => IntervalFound) | null;
  /** Why nothing built on it can have an interval; null where it can. */
  readonly barred: string | null;
  /** The fewest records that any count under it rests on; null where none does. */
  readonly fewest: number | null;
  /** The station-days under it; null where there are none. */
  readonly clusters: () => ClusterSpread | null;
  readonly cautions: readonly string[];
  readonly accounts: readonly CountedRecords[];
  /** The interval that is shown, made when first asked for. */
  readonly interval: () => IntervalFound;
}

/** A text; null for missing. */
export interface TextValue {
  readonly kind: 'text';
  readonly text: string | null;
  readonly accounts: readonly CountedRecords[];
  /** The numbers it was chosen or made by, where there are any. */
  readonly basis?: readonly NumberValue[];
  /** Why it is missing, where something is known of that. */
  readonly why?: string;
}

/** A date; null for missing. */
export interface DateValue {
  readonly kind: 'date';
  /** Days since 1970-01-01. */
  readonly day: number | null;
  readonly accounts: readonly CountedRecords[];
  /** The numbers it was chosen or made by, where there are any. */
  readonly basis?: readonly NumberValue[];
  /** Why it is missing, where something is known of that. */
  readonly why?: string;
}

/** What a condition gives outside `where`. */
export interface TruthValue {
  readonly kind: 'truth';
  /** Null for unknown, when a value compared is missing. */
  readonly truth: boolean | null;
  /** 1, 0 or NaN in every shared resample; null where it cannot change. */
  readonly draws: (() => Float64Array) | null;
  /** The numbers it was decided by. */
  readonly basis: readonly NumberValue[];
  readonly accounts: readonly CountedRecords[];
}

/** Rows of a table: a selection. */
export interface RowsValue {
  readonly kind: 'rows';
  readonly table: string;
  readonly counted: CountedRecords;
}

/** Several values of one kind: an input that is a list. */
export interface ListValue {
  readonly kind: 'list';
  readonly items: readonly (NumberValue | TextValue | DateValue)[];
  readonly accounts: readonly CountedRecords[];
}

/** A sheet, as far as it has been filled. */
export interface SheetValue {
  readonly kind: 'sheet';
  readonly name: string;
  readonly keys: readonly string[];
  /** What each column gives; `unknown` for one that has a problem. */
  readonly columns: ReadonlyMap<string, FormulaKind>;
  /** Its keys and columns as a table of records, a row a group. */
  readonly table: BookTable;
  /** The codes of each row's keys. */
  readonly rowKeys: readonly (readonly (string | number | null)[])[];
  /** The values of each column, a row each. */
  readonly cells: ReadonlyMap<string, readonly Evaluated[]>;
  /** Every row's number, ascending. */
  readonly rows: Uint32Array;
  /** The same in the order in which the rows are shown. */
  readonly order: Uint32Array;
  readonly accounts: readonly CountedRecords[];
}

/** What cannot be computed because something it needs is wrong. */
export interface FailedValue {
  readonly kind: 'problem';
  readonly problems: readonly Problem[];
}

/** What a formula or an input gives, as other formulas use it. */
export type Evaluated =
  | NumberValue
  | TextValue
  | DateValue
  | TruthValue
  | RowsValue
  | ListValue
  | SheetValue
  | FailedValue;

/** Every record count under a value, each with what was left out and why. */
export function accountOf(evaluated: Evaluated): readonly CountedRecords[] {
  if (evaluated.kind === 'rows') return [evaluated.counted];
  return evaluated.kind === 'problem' ? [] : evaluated.accounts;
}
