import type { Interval } from '../estimate.js';
import { normalZ, twoSided } from '../interval.js';
import { checkCounts } from './counts.js';

/**
 * The Agresti-Coull interval for x of n before it is cut at 0 and 1, so its ends may lie outside; both null when n is
 * 0. Agresti A, Coull BA (1998) The American Statistician 52:119-126.
 */
export function agrestiCoullUncut(x: number, n: number, confidence = 0.95): Interval {
  checkCounts(x, n);
  const z = normalZ(confidence);
  const method = 'Agresti-Coull';
  if (n === 0) return twoSided(Number.NaN, Number.NaN, confidence, method);
  const trials = n + z * z;
  const p = (x + (z * z) / 2) / trials;
  const half = z * Math.sqrt((p * (1 - p)) / trials);
  return twoSided(p - half, p + half, confidence, method);
}

/** The Agresti-Coull interval for x of n, as proportions in [0, 1]; both ends null when n is 0. */
export function agrestiCoull(x: number, n: number, confidence = 0.95): Interval {
  const uncut = agrestiCoullUncut(x, n, confidence);
  const low = uncut.low === null ? null : Math.max(0, uncut.low);
  const high = uncut.high === null ? null : Math.min(1, uncut.high);
  return { ...uncut, low, high };
}
