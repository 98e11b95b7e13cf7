import type { Compared } from '../statistic/compared.js';
import type { Estimate } from '../statistic/estimate.js';

/** A comparison as an estimate: its value with its limits, or why there are none. */
export function comparedEstimate(
  { value, interval }: Compared,
  whyNot: string,
  cautions: readonly string[] = [],
): Estimate {
  const limits = interval !== null && (interval.low !== null || interval.high !== null) ? interval : null;
  const why = value === null ? whyNot : limits === null ? 'the method gives no limits here' : null;
  // Without a value limits would float: one end alone says little to a reader who has no middle.
  return { value, numerator: null, denominator: null, interval: value === null ? null : limits, why, cautions };
}
