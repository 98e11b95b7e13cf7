import type { Estimate } from '../../statistic/estimate.js';
import { percentileInterval } from '../../statistic/resample/percentile-interval.js';

/** A value with limits from its resampled values, none where there are too few to tell. */
export function resampledEstimate(value: number, draws: Float64Array, why: string | null = null): Estimate {
  const found =
    draws.length < 100 || value === 0 ? null : percentileInterval(draws, 0.95, 'station-days resampled within weekday');
  const alike = found !== null && found.low === found.high;
  const interval = alike ? null : found;
  const whyNone =
    why ??
    (value === 0
      ? 'nothing is chosen'
      : alike
        ? 'it is the same in every resample'
        : 'under 100 resamples, or one without a value');
  return { value, numerator: null, denominator: null, interval, why: interval === null ? whyNone : null, cautions: [] };
}
