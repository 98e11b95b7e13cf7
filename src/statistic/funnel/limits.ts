import { binomialCumulative, binomialMass, binomialQuantile } from '../distribution/binomial.js';

/** The chances at which a funnel has its limits, each the chance of staying at or under it: 95 % within the inner pair. */
export const funnelChances = { outerLow: 0.001, innerLow: 0.025, innerHigh: 0.975, outerHigh: 0.999 } as const;

/** Where a station of a given size leaves the funnel. */
export interface FunnelLimit {
  /** The fewest cases whose cumulative chance reaches the limit's. */
  readonly count: number;
  /** That count moved by the part of its chance not needed, as a proportion; 0 where it would fall below. */
  readonly proportion: number;
}

/**
 * The exact binomial limit of a funnel around a target proportion for n trials at one cumulative chance, such as 0.975.
 * Spiegelhalter DJ (2005) Statistics in Medicine 24:1185-1202, appendix A.1.1.
 */
export function funnelLimit(target: number, n: number, chance: number): FunnelLimit {
  const count = binomialQuantile(chance, n, target);
  const unneeded = (binomialCumulative(count, n, target) - chance) / binomialMass(count, n, target);
  return { count, proportion: Math.max(0, (count - unneeded) / n) };
}
