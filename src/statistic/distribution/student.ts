import { betaLogTails, betaQuantileShare } from './beta.js';

/**
 * The chance that Student's t with df degrees of freedom is at most t; from the incomplete beta function, DLMF 8.17.
 */
export function studentCumulative(t: number, df: number): number {
  const square = t * t;
  const share = df / (df + square);
  const rest = square / (df + square);
  const beyond = Math.exp(betaLogTails(share, rest, df / 2, 0.5).below) / 2;
  return t > 0 ? 1 - beyond : beyond;
}

/** The t below which Student's t with df degrees of freedom falls with this chance, strictly between 0 and 1. */
export function studentQuantile(chance: number, df: number): number {
  return -studentUpperQuantile(chance, df);
}

/** The t above which Student's t with df degrees of freedom falls with this chance: 2.776 for 0.025 and 4. */
export function studentUpperQuantile(chance: number, df: number): number {
  if (!(chance > 0 && chance < 1)) throw new RangeError(`no Student quantile at a chance of ${chance}`);
  if (chance > 0.5) return -studentUpperQuantile(1 - chance, df);
  const { share, rest } = betaQuantileShare(2 * chance, df / 2, 0.5);
  return Math.sqrt((df * rest) / share);
}
