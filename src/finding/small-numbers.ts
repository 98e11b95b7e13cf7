import type { Estimate } from '../statistic/estimate.js';
import { poissonExact, poissonRate } from '../statistic/poisson.js';

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

/** Events by exposure with exact limits; with none, the one-sided upper limit −log(1 − confidence) ÷ exposure. */
export function eventRate(events: number, exposure: number, confidence = 0.95): Estimate {
  const rate = poissonRate(events, exposure, confidence);
  if (events > 0 || rate.interval === null) return rate;
  // One side at 95 % is the upper of two at 90 %.
  const { high } = poissonExact(0, exposure, 2 * confidence - 1);
  const method = 'exact Poisson, one-sided upper limit with no event';
  return { ...rate, interval: { low: 0, high, confidence, sides: 'upper', method } };
}
