import type { Estimate } from '../../statistic/estimate.js';
import { percentileInterval } from '../../statistic/resample/percentile-interval.js';

/** On fewer station-days, drawing days again says too little of chance. Common practice, no source. */
const enoughDays = 20;

/** The cost was known, so that the count alone moves. */
const method = 'the count’s station-days resampled, the cost as known';

/**
 * The limits of a cost in dollars by what was counted on some station-days, from the count in each resample of them; or why
 * there are none. A resample in which nothing was counted has no cost, and leaving it out would make the limits too narrow.
 */
export function costLimits(
  cost: number,
  stationDays: number,
  countsDrawn: () => Float64Array,
): Pick<Estimate, 'interval' | 'why'> {
  if (stationDays < enoughDays) return { interval: null, why: `under ${enoughDays} station days` };
  const interval = percentileInterval(
    countsDrawn().map((count) => cost / count),
    0.95,
    method,
  );
  if (interval === null) return { interval, why: 'in some resamples none was counted' };
  return interval.low === interval.high
    ? { interval: null, why: 'every day counts the same' }
    : { interval, why: null };
}
