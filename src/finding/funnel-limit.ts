import { binomialCumulative, binomialMass, binomialQuantile } from '../statistic/distribution/binomial.js';

/**
 * The rate that a share `chance` of stations with n trials would stay at or under, were the target rate true for all:
 * the exact binomial quantile, interpolated between counts, as a proportion; never below 0. Spiegelhalter 2005,
 * Statistics in Medicine 24:1185-1202, appendix A.1.1.
 */
export function funnelLimit(target: number, n: number, chance: number): number {
  const count = binomialQuantile(chance, n, target);
  const over = binomialCumulative(count, n, target) - chance;
  return Math.max(0, count - over / binomialMass(count, n, target)) / n;
}
