import type { Problem } from '../problem/problem.js';
import type { Interval } from '../statistic/estimate.js';

/** A number with its unit and all it stands on. */
export interface NumberResult {
  readonly kind: 'number';
  /** Null where the value is missing or not defined; `why` says so. */
  readonly value: number | null;
  /** In words: `inspections`, `dollars an inspection`, `minutes`; empty for a plain number or share. */
  readonly unit: string;
  /** Cases and trials, where the value is a share or rate of counted records; or what a ratio is made of. */
  readonly numerator: number | null;
  readonly denominator: number | null;
  /** Whether the numerator is no part of the denominator but held against it, as events by hours are; no where absent. */
  readonly isRatio?: true;
  readonly interval: Interval | null;
  /** Why there is no value or no interval; null where nothing needs saying (a plain count or an input). */
  readonly why: string | null;
  readonly cautions: readonly string[];
  /** Whether inputs and numbers written out are all it is made of, and no record; absent where records are. */
  readonly given?: true;
}

/** What a formula gives: a number, text (shown as `text` where its `code` has a name of its own), a date (days since 1970-01-01), yes or no, nothing (with the reason; `withheld` where it is there and a public page may not tell it), or problems. */
export type Result =
  | NumberResult
  | { readonly kind: 'text'; readonly text: string; readonly code?: string }
  | { readonly kind: 'date'; readonly day: number }
  | { readonly kind: 'truth'; readonly truth: boolean }
  | { readonly kind: 'missing'; readonly why: string; readonly withheld?: true }
  | { readonly kind: 'problem'; readonly problems: readonly Problem[] };
