import type { Interval } from '../estimate.js';
import type { SurvivalCurve } from './curve.js';

/** The share still open just after a time; null past the longest follow-up, unless all had ended by then. */
export interface SurvivalAt {
  readonly value: number | null;
  readonly standardError: number | null;
  /** Null before the first ending, where nothing is known of the spread, and where the curve has reached 0. */
  readonly interval: Interval | null;
}

/** Where a time falls among the curve's steps: the last step at or before it, −1 before the first. */
export function stepAt(times: readonly number[], time: number): number {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (times[middle]! <= time) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

/** Whether the curve says anything about a time: it was followed that far, or all had ended. */
export function reaches(curve: SurvivalCurve, time: number): boolean {
  if (curve.followedTo === null) return false;
  return time <= curve.followedTo || curve.survival.at(-1) === 0;
}

/** The share still open just after a time, with its log-log limits. Kaplan EL, Meier P (1958) JASA 53:457-481. */
export function survivalAt(curve: SurvivalCurve, time: number): SurvivalAt {
  if (!reaches(curve, time)) return { value: null, standardError: null, interval: null };
  const step = stepAt(curve.times, time);
  if (step < 0) return { value: 1, standardError: null, interval: null };
  const low = curve.low[step] ?? null;
  const high = curve.high[step] ?? null;
  const limits = { low, high, confidence: curve.confidence, sides: 'two', method: 'Kaplan-Meier, log-log' } as const;
  return {
    value: curve.survival[step] ?? null,
    standardError: curve.standardError[step] ?? null,
    interval: low === null ? null : limits,
  };
}
