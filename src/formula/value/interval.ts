import { percentileInterval } from '../../statistic/resample/percentile-interval.js';
import type { Environment } from '../environment.js';
import type { IntervalFound, NumberValue } from './evaluated.js';
import { describeResamples, inThousands } from './resamples.js';

const confidence = 0.95;
/** Fewer records than this under any count and resampling them says nothing honest. */
const enoughRecords = 5;
const enoughClusters = 20;

/** The rule for intervals, in one place and sentence by sentence: `intervalFor` keeps it and the reference page tells it. */
export const intervalRules: readonly string[] = [
  'Counts and totals are a census of what was recorded, and what is given is given: no interval, and nothing to explain. Sums, differences and multiples of those stay so.',
  'Shares, rates, ratios, means, medians and quantiles say something about the process behind the records: they carry an interval, and so does whatever is built from them.',
  'A share of counted rows has the exact interval for station-days (Korn and Graubard 1998), and a median of waits that of its survival curve; either keeps it when only scaled or shifted by what is given. With no case at all a share has a one-sided limit.',
  'The difference of two shares that have no station-day in common has the limits of Newcombe’s method 10 (1998) at their effective sizes.',
  'All others are evaluated again over the shared resamples of station-days, so that figures made from the same records move together: percentile limits.',
  'No interval, and the reason why: a count under five anywhere in it, rows of fewer than two station-days, a part that cannot be resampled (the lowest, a number of distinct values, a finding’s number, anything behind a text or a date), a resample in which it is not defined, or resamples that all agree.',
  'A number from records may decide which rows are counted, behind `where` or in the selection they are of. Where it is one limit that a number of each row must lie above or below, and the rows are counted, added up or averaged, it decides them anew in every resample. In other cases there is no interval, and the reason why; a count then says that what decided its rows is taken as known, and so does the table of a finding, whose limits are its own.',
];

/** The interval that is due to a number, or the reason why there is none, by `intervalRules`. */
export function intervalFor(number: Omit<NumberValue, 'interval'>, environment: Environment): IntervalFound {
  const { standing, value, why, barred, ownInterval, draws, fewest } = number;
  if (standing !== 'estimate') return { interval: null, why: value === null ? why : null, cautions: [] };
  if (value === null) return withoutInterval(why ?? 'there is no value');
  if (ownInterval !== null) return ownInterval();
  if (barred !== null) return withoutInterval(barred);
  if (draws === null) return withoutInterval('its rows belong to no station-day, so that nothing can be resampled');
  if (fewest !== null && fewest < enoughRecords) {
    const records = fewest === 1 ? 'a single record' : `${fewest} records`;
    return withoutInterval(`it rests on ${records} in one of its counts, and fewer than five cannot be resampled`);
  }
  const clusters = number.clusters();
  if (clusters !== null && clusters.fewest < 2) {
    return withoutInterval('all records of one of its counts are of one station-day');
  }
  return resampled(draws(), clusters?.most ?? 0, environment);
}

/** No interval, for a reason. */
export function withoutInterval(why: string): IntervalFound {
  return { interval: null, why, cautions: [] };
}

function resampled(draws: Float64Array, clusters: number, environment: Environment): IntervalFound {
  const method = `percentile limits of ${describeResamples(environment)}`;
  const interval = percentileInterval(draws, confidence, method);
  if (interval === null) {
    const undefinedDraws = draws.reduce((sum, draw) => sum + (Number.isFinite(draw) ? 0 : 1), 0);
    const share = `${inThousands(undefinedDraws)} of ${inThousands(draws.length)} resamples`;
    return withoutInterval(`it is not defined in ${share}`);
  }
  if (interval.low === interval.high) return withoutInterval('it is the same in every resample');
  const cautions = clusters < enoughClusters ? [`under ${enoughClusters} station-days`] : [];
  return { interval, why: null, cautions };
}
