import type { Interval } from '../estimate.js';
import { checkSameLength } from '../same-length.js';
import type { SurvivalCurve } from './curve.js';

/** Shares closer than this are the same share, as in R's survival library. */
const SAME = 1.5e-8;

/** The time by which a share has ended; every part null where the curve does not reach it. */
export interface SurvivalQuantile {
  readonly value: number | null;
  readonly interval: Interval;
}

/**
 * Where a falling step curve reaches a level: the first time at or below it, or the middle of the flat stretch where it
 * rests on the level exactly; null when it does not get there.
 */
function timeReaching(
  times: readonly number[],
  shares: readonly (number | null)[],
  level: number,
  end: number | null,
): number | null {
  const at = shares.findIndex((share) => share !== null && share <= level + SAME);
  const time = times[at];
  const share = shares[at];
  if (time === undefined || share === undefined || share === null) return null;
  if (share < level - SAME) return time;
  const below = shares.findIndex((later) => later !== null && later < level - SAME);
  return (time + (times[below] ?? end ?? time)) / 2;
}

/**
 * The time by which a share p, in (0, 1), has ended, with limits where the curve's own limits reach the same share.
 * Brookmeyer R, Crowley J (1982) Biometrics 38:29-41.
 */
export function survivalQuantile(curve: SurvivalCurve, p: number): SurvivalQuantile {
  if (!(p > 0 && p < 1)) throw new RangeError(`a share of ended times lies between 0 and 1, not ${p}`);
  const reach = (shares: readonly (number | null)[]) => timeReaching(curve.times, shares, 1 - p, curve.followedTo);
  const interval: Interval = {
    low: reach(curve.low),
    high: reach(curve.high),
    confidence: curve.confidence,
    sides: 'two',
    method: 'Kaplan-Meier, log-log limits inverted (Brookmeyer-Crowley)',
  };
  return { value: reach(curve.survival), interval };
}

/**
 * The time by which a share p has ended among observations already sorted by time, each standing for a whole number of
 * observations alike; null when the curve does not reach it. The same rule as `survivalQuantile` in one pass without
 * anything kept, for drawing it again thousands of times.
 */
export function weightedSurvivalQuantile(
  sortedTimes: ArrayLike<number>,
  ended: ArrayLike<number>,
  weights: ArrayLike<number>,
  p: number,
): number | null {
  checkSameLength({ times: sortedTimes, endings: ended, weights });
  let atRisk = 0;
  for (let i = 0; i < sortedTimes.length; i += 1) atRisk += weights[i]!;
  const level = 1 - p;
  let open = 1;
  let resting: number | null = null;
  let last = 0;
  for (let i = 0; i < sortedTimes.length && atRisk > 0; ) {
    const time = sortedTimes[i]!;
    let events = 0;
    let leaving = 0;
    for (; i < sortedTimes.length && sortedTimes[i] === time; i += 1) {
      const weight = weights[i]!;
      leaving += weight;
      if (ended[i] === 1) events += weight;
    }
    if (leaving > 0) last = time;
    open *= (atRisk - events) / atRisk;
    atRisk -= leaving;
    if (open < level - SAME) return resting === null ? time : (resting + time) / 2;
    if (open <= level + SAME && resting === null) resting = time;
  }
  return resting === null ? null : (resting + last) / 2;
}
