import type { Compared } from '../compared.js';
import { finiteOrNull, twoSided } from '../interval.js';
import { clopperPearson } from '../proportion/clopper-pearson.js';
import { exactTest } from '../proportion/exact-test.js';

/** A ratio of two rates with the p-value of equal rates; the p-value is null without events. */
export interface RateRatio extends Compared {
  readonly p: number | null;
}

/**
 * The ratio of two Poisson rates, given the events together: x1 of x1 + x2 is then binomial. Without events in the
 * second group there is no value and no upper limit. Przyborowski J, Wilenski H (1940) Biometrika 31:313-323.
 */
export function rateRatio(x1: number, exposure1: number, x2: number, exposure2: number, confidence = 0.95): RateRatio {
  if (!(exposure1 > 0 && exposure2 > 0)) throw new RangeError(`exposures of ${exposure1} and ${exposure2}`);
  if (x1 + x2 === 0) return { value: null, interval: null, p: null };
  const scale = exposure2 / exposure1;
  const share = clopperPearson(x1, x1 + x2, confidence);
  const odds = (p: number | null) => (p === null ? Number.NaN : (p / (1 - p)) * scale);
  return {
    value: finiteOrNull((x1 / x2) * scale),
    interval: twoSided(odds(share.low), odds(share.high), confidence, 'exact, given the total'),
    p: exactTest(x1, x1 + x2, exposure1 / (exposure1 + exposure2)),
  };
}
