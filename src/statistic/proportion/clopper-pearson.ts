import { betaQuantile, betaQuantileShare } from '../distribution/beta.js';
import type { Interval } from '../estimate.js';
import { tailBeyond, twoSided } from '../interval.js';
import { checkCounts } from './counts.js';

/**
 * The exact interval for x of n, as proportions in [0, 1]; both ends null when n is 0. x and n need not be whole, so
 * that effective sizes can be given. Clopper CJ, Pearson ES (1934) Biometrika 26:404-413.
 */
export function clopperPearson(x: number, n: number, confidence = 0.95): Interval {
  checkCounts(x, n);
  const tail = tailBeyond(confidence);
  const method = 'exact (Clopper-Pearson)';
  if (n === 0) return twoSided(Number.NaN, Number.NaN, confidence, method);
  const low = x === 0 ? 0 : betaQuantile(tail, x, n - x + 1);
  const high = x === n ? 1 : betaQuantileShare(tail, n - x, x + 1).rest;
  return twoSided(low, high, confidence, method);
}
