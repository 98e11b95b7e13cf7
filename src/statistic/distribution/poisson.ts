import { gammaCumulative, gammaUpper } from './gamma.js';
import { logPoissonMass } from './saddle-point.js';
import { smallestReaching } from './whole.js';

/** The chance of exactly k events where `mean` are expected; Loader 2000. 0 where k is not a whole number from 0. */
export function poissonMass(k: number, mean: number): number {
  if (!Number.isInteger(k) || k < 0) return 0;
  if (mean <= 0) return k === 0 ? 1 : 0;
  return Math.exp(logPoissonMass(k, mean));
}

/** The chance of at most k events where `mean` are expected. */
export function poissonCumulative(k: number, mean: number): number {
  return k < 0 ? 0 : gammaUpper(mean, Math.floor(k) + 1);
}

/** The chance of more than k events where `mean` are expected. */
export function poissonUpper(k: number, mean: number): number {
  return k < 0 ? 1 : gammaCumulative(mean, Math.floor(k) + 1);
}

/** The fewest events that are not exceeded with at least this chance, below 1, where `mean` are expected. */
export function poissonQuantile(chance: number, mean: number): number {
  if (!(chance < 1)) throw new RangeError('a Poisson count has no upper end');
  return smallestReaching(chance, mean, Number.MAX_SAFE_INTEGER, (k) => poissonCumulative(k, mean));
}
