import { gammaCumulative, gammaUpper, gammaUpperQuantile } from './gamma.js';

/**
 * The chance that a standard normal variable is at most x, exact far into either tail; from Γ(½, x²/2), DLMF 7.11.2.
 */
export function normalCumulative(x: number): number {
  if (x > 0) return 1 - normalCumulative(-x);
  return x > -1 ? 0.5 - gammaCumulative((x * x) / 2, 0.5) / 2 : gammaUpper((x * x) / 2, 0.5) / 2;
}

/** The x below which a standard normal variable falls with this chance, which must lie strictly between 0 and 1. */
export function normalQuantile(chance: number): number {
  return -normalUpperQuantile(chance);
}

/** The x above which a standard normal variable falls with this chance: 1.96 for 0.025. */
export function normalUpperQuantile(chance: number): number {
  if (!(chance > 0 && chance < 1)) throw new RangeError(`no normal quantile at a chance of ${chance}`);
  if (chance > 0.5) return -normalUpperQuantile(1 - chance);
  return Math.sqrt(2 * gammaUpperQuantile(2 * chance, 0.5));
}

/** The two-sided p-value of a standard normal z. */
export function normalTwoSided(z: number): number {
  return gammaUpper((z * z) / 2, 0.5);
}
