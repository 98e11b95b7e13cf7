import type { Interval } from '../../statistic/estimate.js';
import type { IntervalFound } from './evaluated.js';

const otherSide = { two: 'two', upper: 'lower', lower: 'upper' } as const;

/** An interval through value × factor + shift; a factor below 0 turns it round, and one of 0 leaves nothing to say. */
export function scaledInterval(found: IntervalFound, factor: number, shift: number): IntervalFound {
  const { interval } = found;
  if (interval === null) return found;
  if (factor === 0 || !Number.isFinite(factor) || !Number.isFinite(shift)) {
    return { ...found, interval: null, why: 'a multiple of 0 has no interval' };
  }
  const through = (limit: number | null) => (limit === null ? null : limit * factor + shift);
  const [low, high] = [through(interval.low), through(interval.high)];
  const turned: Interval =
    factor > 0 ? { ...interval, low, high } : { ...interval, low: high, high: low, sides: otherSide[interval.sides] };
  return { ...found, interval: turned };
}
