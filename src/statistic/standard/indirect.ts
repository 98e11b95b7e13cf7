import type { Interval } from '../estimate.js';
import { normalZ, twoSided } from '../interval.js';
import { poissonExact } from '../poisson.js';
import { poissonTest } from '../poisson-test.js';
import { raisedTo } from '../raised-to.js';
import { checkSameLength } from '../same-length.js';

/** Events seen by events expected. */
export interface StandardisedRatio {
  readonly expected: number;
  readonly ratio: number;
  readonly exact: Interval;
  /** Byar's approximation, within a few parts in a thousand of the exact limits from ten events up. */
  readonly byar: Interval;
  readonly standardError: number;
  readonly normal: Interval;
  /** Of a ratio of 1, exact and two-sided. */
  readonly p: number;
}

/** The events that reference rates expect over exposures, stratum by stratum. Throws where one list is longer. */
export function expectedEvents(rates: readonly number[], exposures: readonly number[]): number {
  checkSameLength({ rates, exposures });
  return rates.reduce((sum, rate, i) => sum + rate * exposures[i]!, 0);
}

/**
 * The standardised ratio of observed to expected events, expected above 0. Exact limits: Garwood F (1936) Biometrika
 * 28:437-442; Byar: Breslow NE, Day NE (1987) Statistical Methods in Cancer Research II, section 2.3.
 */
export function standardisedRatio(observed: number, expected: number, confidence = 0.95): StandardisedRatio {
  if (!(expected > 0 && observed >= 0)) throw new RangeError(`${observed} events where ${expected} are expected`);
  const z = normalZ(confidence);
  const ratio = observed / expected;
  const standardError = Math.sqrt(observed) / expected;
  const cubed = (count: number, side: number) =>
    count === 0 ? 0 : (count * raisedTo(1 - 1 / (9 * count) + (side * z) / (3 * Math.sqrt(count)), 3)) / expected;
  return {
    expected,
    ratio,
    exact: poissonExact(observed, expected, confidence),
    byar: twoSided(cubed(observed, -1), cubed(observed + 1, 1), confidence, 'Byar'),
    standardError,
    normal: twoSided(ratio - z * standardError, ratio + z * standardError, confidence, 'normal'),
    p: poissonTest(observed, expected),
  };
}
