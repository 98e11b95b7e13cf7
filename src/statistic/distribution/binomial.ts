import { betaLogTails } from './beta.js';
import { logBinomialMass } from './saddle-point.js';
import { smallestReaching } from './whole.js';

/**
 * The chance of exactly k cases in n trials with chance p each; Loader 2000. 0 where k is not a whole number from 0 to
 * n.
 */
export function binomialMass(k: number, n: number, p: number): number {
  if (!Number.isInteger(k) || k < 0 || k > n) return 0;
  if (p <= 0) return k === 0 ? 1 : 0;
  if (p >= 1) return k === n ? 1 : 0;
  return Math.exp(logBinomialMass(k, n - k, p, 1 - p));
}

/** The chance of at most k cases in n trials with chance p each. */
export function binomialCumulative(k: number, n: number, p: number): number {
  const whole = Math.floor(k);
  if (whole < 0) return 0;
  if (whole >= n) return 1;
  return Math.exp(betaLogTails(p, 1 - p, whole + 1, n - whole).above);
}

/** The chance of more than k cases in n trials with chance p each. */
export function binomialUpper(k: number, n: number, p: number): number {
  const whole = Math.floor(k);
  if (whole < 0) return 1;
  if (whole >= n) return 0;
  return Math.exp(betaLogTails(p, 1 - p, whole + 1, n - whole).below);
}

/** The fewest cases in n trials with chance p each that are not exceeded with at least this chance. */
export function binomialQuantile(chance: number, n: number, p: number): number {
  if (!(chance > 0)) return 0;
  if (chance >= 1) return n;
  return smallestReaching(chance, n * p, n, (k) => binomialCumulative(k, n, p));
}
