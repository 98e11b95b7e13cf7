import { funnelChances, funnelLimit } from '../statistic/funnel/limits.js';

/** A limit of a funnel at one number of trials, as a proportion. */
export interface FunnelPoint {
  readonly trials: number;
  readonly proportion: number;
}

/** One limit of a funnel over a range of sizes. */
export interface FunnelCurve {
  /** Whether it is one of the 95 % limits; else it is one of the 99.8 %. */
  readonly isInner: boolean;
  readonly points: readonly FunnelPoint[];
}

/** Sizes at which limits are computed between the ends: enough that a line through them shows how they step. */
const sizes = 60;

/**
 * The four exact binomial limits around a target strictly between 0 and 1, from one number of trials to another, at
 * most 61 whole sizes evenly apart; none where the lesser end is no size. They waver, as counts are whole.
 */
export function funnelCurves(target: number, from: number, to: number): FunnelCurve[] {
  if (!isSize(from)) return [];
  const grid = new Set<number>();
  for (let step = 0; step <= sizes; step++) grid.add(Math.round(from + ((to - from) * step) / sizes));
  return Object.entries(funnelChances).map(([name, chance]) => ({
    isInner: name.startsWith('inner'),
    points: [...grid].map((trials) => ({ trials, proportion: funnelLimit(target, trials, chance).proportion })),
  }));
}

/** Whether limits can be computed for so many trials. */
export function isSize(trials: number): boolean {
  return Number.isInteger(trials) && trials > 0;
}
