import { gammaQuantile, gammaUpperQuantile } from './distribution/gamma.js';
import type { Estimate, Interval } from './estimate.js';
import { tailBeyond, twoSided } from './interval.js';

/**
 * The exact interval for a rate from a count of events over an exposure above 0, per unit of exposure; the lower limit
 * is 0 when there are no events. Garwood F (1936) Biometrika 28:437-442.
 */
export function poissonExact(events: number, exposure = 1, confidence = 0.95): Interval {
  if (!(events >= 0 && exposure > 0 && Number.isFinite(events) && Number.isFinite(exposure))) {
    throw new RangeError(`${events} events over ${exposure}`);
  }
  const tail = tailBeyond(confidence);
  const low = events === 0 ? 0 : gammaQuantile(tail, events) / exposure;
  return twoSided(low, gammaUpperQuantile(tail, events + 1) / exposure, confidence, 'exact Poisson (Garwood)');
}

/** Events per unit of exposure with the exact interval; no value without exposure. */
export function poissonRate(events: number, exposure = 1, confidence = 0.95): Estimate {
  const counts = { numerator: events, denominator: exposure, cautions: [] };
  if (exposure === 0) return { ...counts, value: null, interval: null, why: 'no exposure was recorded' };
  return { ...counts, value: events / exposure, interval: poissonExact(events, exposure, confidence), why: null };
}
