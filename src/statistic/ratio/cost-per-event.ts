import type { Compared } from '../compared.js';
import type { Interval } from '../estimate.js';
import { tailBeyond } from '../interval.js';
import { poissonExact } from '../poisson.js';

/** A known cost by a count of events. */
export interface CostPerEvent extends Compared {
  readonly interval: Interval;
  /** One-sided, and only where there was no event: the cost of each is at least this. */
  readonly lowerIfNone: number | null;
}

/**
 * A cost taken as known by a count of events, an average and not a marginal cost; limits invert the exact Poisson
 * limits of the count. Without events there is no value and no upper limit. Garwood F (1936) Biometrika 28:437-442.
 */
export function costPerEvent(cost: number, events: number, confidence = 0.95): CostPerEvent {
  if (!(cost >= 0 && Number.isFinite(cost))) throw new RangeError(`a cost of ${cost}`);
  const { low, high } = poissonExact(events, 1, confidence);
  const method = 'cost by exact Poisson limits of the count (Garwood)';
  const lower = high === null ? null : cost / high;
  const upper = low === null || low === 0 ? null : cost / low;
  return {
    value: events === 0 ? null : cost / events,
    interval: { low: lower, high: upper, confidence, sides: 'two', method },
    lowerIfNone: events === 0 ? cost / -Math.log(2 * tailBeyond(confidence)) : null,
  };
}
