import type { Interval } from '../estimate.js';

/** What goes into a worked example, in words, and what the program makes of it, value by value. */
export interface WorkedExample {
  readonly given: string;
  readonly found: readonly (readonly [label: string, value: number | null])[];
}

/** What a reader must know of a statistic to do it again by hand. */
export interface StatisticAccount {
  readonly name: string;
  /** What it gives, and for what. */
  readonly gives: string;
  readonly formula: string;
  readonly source: string;
  /** Computed when the methods page is made, by the function that everything else calls. */
  readonly example: () => WorkedExample;
}

/** The two ends of an interval as values of a worked example. */
export function endsOf(interval: Interval | null): WorkedExample['found'] {
  return [
    ['low', interval?.low ?? null],
    ['high', interval?.high ?? null],
  ];
}
