import type { Estimate } from '../../statistic/estimate.js';
import { percentileInterval } from '../../statistic/resample/percentile-interval.js';

/** A value with limits from its resampled values, none where there are too few to tell. */
export function resampledEstimate(value: number, draws: Float64Array, why: string | null = null): Estimate {
  const interval =
    draws.length < 100 || value === 0 ? null : percentileInterval(draws, 0.95, 'station-days resampled within weekday');
  const whyNone = why ?? (value === 0 ? 'nothing is chosen' : 'under 100 resamples, or one without a value');
  return { value, numerator: null, denominator: null, interval, why: interval === null ? whyNone : null, cautions: [] };
}
