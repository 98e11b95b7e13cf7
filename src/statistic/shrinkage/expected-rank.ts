import { betaLogOddsDensity, betaLogTails, betaQuantileShare } from '../distribution/beta.js';
import type { BetaPrior } from './beta-binomial.js';

/** Ranks of proportions known only as beta distributions. */
export interface ExpectedRanks {
  /** 1 for the highest proportion. */
  readonly ranks: readonly number[];
  /** The chance that the proportion of the row is below that of the column; 0 on the diagonal. */
  readonly below: readonly (readonly number[])[];
}

/** Log odds beyond which a beta variable lies with a chance of 1e-18, and its rough width on that scale. */
function reach({ alpha, beta }: BetaPrior) {
  const logOdds = ({ share, rest }: { readonly share: number; readonly rest: number }) => Math.log(share / rest);
  const low = logOdds(betaQuantileShare(1e-18, alpha, beta));
  const high = -logOdds(betaQuantileShare(1e-18, beta, alpha));
  return { low, high, width: Math.sqrt(1 / alpha + 1 / beta) };
}

/**
 * The chance that one beta variable is below another, by the trapezoid rule over log odds, where the integrand is
 * smooth and fades at both ends, so that the rule settles faster than any power of the step: Trefethen LN, Weideman JAC
 * (2014) SIAM Review 56:385-458.
 */
export function chanceBelow(first: BetaPrior, second: BetaPrior): number {
  const { low, high, width } = reach(second);
  const step = Math.min(width, reach(first).width) / 4;
  const points = Math.ceil((high - low) / step);
  let sum = 0;
  for (let i = 0; i <= points; i += 1) {
    const u = low + i * step;
    const x = 1 / (1 + Math.exp(-u));
    const y = 1 / (1 + Math.exp(u));
    const { below } = betaLogTails(x, y, first.alpha, first.beta);
    sum += betaLogOddsDensity(x, y, second.alpha, second.beta) * Math.exp(below);
  }
  return Math.min(1, sum * step);
}

/**
 * Expected ranks of independent beta proportions, highest first: one plus the chances of each other being higher.
 * Goldstein H, Spiegelhalter DJ (1996) JRSS A 159:385-443.
 */
export function expectedRanks(proportions: readonly BetaPrior[]): ExpectedRanks {
  const below = proportions.map((row, i) =>
    proportions.map((column, j) => (i === j ? 0 : i < j ? chanceBelow(row, column) : 1 - chanceBelow(column, row))),
  );
  return { ranks: below.map((row) => row.reduce((sum, chance) => sum + chance, 1)), below };
}
