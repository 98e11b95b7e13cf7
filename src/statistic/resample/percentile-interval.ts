import type { Interval } from '../estimate.js';
import { tailBeyond } from '../interval.js';
import { quantile } from '../quantile.js';

/**
 * The middle share of a figure's resampled values, by type 7 quantiles. Null when there are none or when a single one
 * is not finite: to leave those out would make the interval narrower just where the figure is least certain. Efron B
 * (1979) Annals of Statistics 7:1-26.
 */
export function percentileInterval(draws: Float64Array, confidence: number, method: string): Interval | null {
  const tail = tailBeyond(confidence);
  if (draws.length === 0 || !draws.every(Number.isFinite)) return null;
  const sorted = draws.slice().sort();
  return { low: quantile(sorted, tail), high: quantile(sorted, 1 - tail), confidence, sides: 'two', method };
}
