import type { Interval } from '../estimate.js';
import { normalZ, twoSided } from '../interval.js';
import { checkCounts } from './counts.js';

/**
 * The Wilson score interval for x of n, as proportions in [0, 1]; both ends null when n is 0. Newcombe RG (1998)
 * Statistics in Medicine 17:857-872, method 3.
 */
export function wilson(x: number, n: number, confidence = 0.95): Interval {
  checkCounts(x, n);
  const z = normalZ(confidence);
  const method = 'Wilson score';
  if (n === 0) return twoSided(Number.NaN, Number.NaN, confidence, method);
  const half = z * Math.sqrt(z * z + 4 * x * (1 - x / n));
  const whole = 2 * (n + z * z);
  const middle = 2 * x + z * z;
  return twoSided(x === 0 ? 0 : (middle - half) / whole, x === n ? 1 : (middle + half) / whole, confidence, method);
}

/**
 * The Wilson score interval with continuity correction, as proportions in [0, 1]; both ends null when n is 0. Newcombe
 * 1998, method 4.
 */
export function wilsonContinuity(x: number, n: number, confidence = 0.95): Interval {
  checkCounts(x, n);
  const method = 'Wilson score with continuity correction';
  if (n === 0) return twoSided(Number.NaN, Number.NaN, confidence, method);
  const z = normalZ(confidence);
  const end = (cases: number) => {
    const p = cases / n;
    const root = Math.sqrt(z * z - 2 - 1 / n + 4 * p * (n * (1 - p) + 1));
    return Math.max(0, (2 * cases + z * z - 1 - z * root) / (2 * (n + z * z)));
  };
  return twoSided(x === 0 ? 0 : end(x), x === n ? 1 : 1 - end(n - x), confidence, method);
}
