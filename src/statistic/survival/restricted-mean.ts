import type { Interval } from '../estimate.js';
import { normalZ, twoSided } from '../interval.js';
import { reaches } from './at.js';
import type { SurvivalCurve } from './curve.js';

/** The mean time up to a horizon; every part null where the curve does not reach the horizon. */
export interface RestrictedMean {
  readonly value: number | null;
  readonly standardError: number | null;
  readonly interval: Interval | null;
}

/**
 * The mean of the time or the horizon, whichever comes first: the area under the curve up to it. Irwin JO (1949) J
 * Hygiene 47:188-189; standard error as in Klein JP, Moeschberger ML (2003) Survival Analysis, eq. 4.5.2.
 */
export function restrictedMean(curve: SurvivalCurve, horizon: number): RestrictedMean {
  if (!(horizon > 0 && Number.isFinite(horizon))) throw new RangeError(`a horizon of ${horizon}`);
  if (!reaches(curve, horizon)) return { value: null, standardError: null, interval: null };
  // Backwards, so that the area from each step to the horizon is at hand when its spread is added.
  let area = 0;
  let variance = 0;
  let until = horizon;
  for (let i = curve.times.length - 1; i >= 0; i -= 1) {
    const time = curve.times[i]!;
    if (time >= horizon) continue;
    area += curve.survival[i]! * (until - time);
    until = time;
    const atRisk = curve.atRisk[i]!;
    const events = curve.events[i]!;
    if (atRisk > events) variance += (area * area * events) / (atRisk * (atRisk - events));
  }
  area += until;
  const standardError = Math.sqrt(variance);
  const half = normalZ(curve.confidence) * standardError;
  const method = `restricted mean to ${horizon}, normal limits`;
  const interval = twoSided(Math.max(0, area - half), Math.min(horizon, area + half), curve.confidence, method);
  return { value: area, standardError, interval };
}
