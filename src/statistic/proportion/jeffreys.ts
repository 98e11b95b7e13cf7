import { betaQuantile, betaQuantileShare } from '../distribution/beta.js';
import type { Interval } from '../estimate.js';
import { tailBeyond, twoSided } from '../interval.js';
import { checkCounts } from './counts.js';

/**
 * The Jeffreys interval for x of n, as proportions in [0, 1]; the lower limit is 0 when x is 0 and the upper 1 when x
 * is n; both ends null when n is 0. Brown LD, Cai TT, DasGupta A (2001) Statistical Science 16:101-133, section 4.1.2.
 */
export function jeffreys(x: number, n: number, confidence = 0.95): Interval {
  checkCounts(x, n);
  const tail = tailBeyond(confidence);
  const method = 'Jeffreys';
  if (n === 0) return twoSided(Number.NaN, Number.NaN, confidence, method);
  const low = x === 0 ? 0 : betaQuantile(tail, x + 0.5, n - x + 0.5);
  const high = x === n ? 1 : betaQuantileShare(tail, n - x + 0.5, x + 0.5).rest;
  return twoSided(low, high, confidence, method);
}
