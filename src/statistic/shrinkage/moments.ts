import { checkSameLength } from '../same-length.js';
import { summary } from '../summary.js';
import type { BetaPrior } from './beta-binomial.js';

/** A beta prior with the mean and spread of raw proportions, and those two. */
export interface BetaMoments extends BetaPrior {
  readonly mean: number;
  readonly standardDeviation: number;
}

/**
 * The beta prior that has the mean and standard deviation of the stations' raw proportions, all n above 0; null where
 * these do not spread, or spread more than any beta. Gelman A et al. (2013) Bayesian Data Analysis, 3rd ed., section
 * 5.1.
 */
export function betaMoments(x: readonly number[], n: readonly number[]): BetaMoments | null {
  checkSameLength({ cases: x, trials: n });
  const { mean, standardDeviation } = summary(x.map((cases, i) => cases / n[i]!));
  if (mean === null || standardDeviation === null || standardDeviation === 0) return null;
  const all = (mean * (1 - mean)) / standardDeviation ** 2 - 1;
  return all > 0 ? { mean, standardDeviation, alpha: mean * all, beta: (1 - mean) * all } : null;
}
