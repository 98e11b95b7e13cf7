import { betaLogTails } from '../distribution/beta.js';
import { increasingRoot } from '../distribution/newton.js';
import { logBinomialMass } from '../distribution/saddle-point.js';
import type { Interval } from '../estimate.js';
import { tailBeyond, twoSided } from '../interval.js';
import { checkCounts } from './counts.js';

/** The p at which P(X > x) + ½ P(X = x) equals the tail, x ≥ 1; Newton on log odds and log chance. */
function lowerLimit(x: number, n: number, tail: number): number {
  const root = increasingRoot(
    (u) => {
      const p = 1 / (1 + Math.exp(-u));
      const q = 1 / (1 + Math.exp(u));
      const mass = Math.exp(logBinomialMass(x, n - x, p, q));
      const more = x === n ? 0 : Math.exp(betaLogTails(p, q, x + 1, n - x).below);
      const chance = more + mass / 2;
      // The slope of P(X > x) in log odds is (n − x) p · mass; that of the mass is (x − n p) · mass.
      return { value: Math.log(chance / tail), slope: (mass * ((n - x) * p + (x - n * p) / 2)) / chance };
    },
    Math.log(x / (n - x + 1)),
  );
  return 1 / (1 + Math.exp(-root));
}

/**
 * The mid-P exact interval for x of n whole counts, as proportions in [0, 1]; both ends null when n is 0. Covers the
 * stated share on average rather than at least. Berry G, Armitage P (1995) The Statistician 44:417-423.
 */
export function midP(x: number, n: number, confidence = 0.95): Interval {
  checkCounts(x, n);
  const tail = tailBeyond(confidence);
  const method = 'mid-P exact';
  if (n === 0) return twoSided(Number.NaN, Number.NaN, confidence, method);
  const low = x === 0 ? 0 : lowerLimit(x, n, tail);
  const high = x === n ? 1 : 1 - lowerLimit(n - x, n, tail);
  return twoSided(low, high, confidence, method);
}
