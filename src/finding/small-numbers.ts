import type { Estimate } from '../statistic/estimate.js';

/** Under this many events nothing is placed, ranked or called different. Common practice, no source. */
export const enoughEvents = 5;

/** Under this many things found by both of two looks, nothing is said of what both missed. Common practice, no source. */
export const enoughMatches = 5;

/** An estimate that is not given, and why; its counts stand. */
export function withheld(why: string, numerator: number | null = null, denominator: number | null = null): Estimate {
  return { value: null, numerator, denominator, interval: null, why, cautions: [] };
}

/** The caution that a comparison of those many events carries; none from five up. */
export function fewEvents(...events: readonly number[]): string[] {
  return events.some((count) => count < enoughEvents) ? [`under ${enoughEvents} events in a group`] : [];
}
