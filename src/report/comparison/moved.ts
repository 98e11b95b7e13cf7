import type { CarriedInterval } from '../results/page-results.js';
import type { Beyond, Moved } from './comparison.js';

/** How far a value moved, and whether beyond its former interval; an end that is not reached bounds nothing. */
export function movedFrom(
  before: number | null | undefined,
  after: number | null | undefined,
  former: Pick<CarriedInterval, 'low' | 'high'> | undefined,
): Moved {
  if (typeof before !== 'number' || typeof after !== 'number') return { by: null, relative: null, beyond: null };
  const by = after - before;
  return { by, relative: before === 0 ? null : by / Math.abs(before), beyond: beyondOf(after, former) };
}

function beyondOf(value: number, former: Pick<CarriedInterval, 'low' | 'high'> | undefined): Beyond {
  if (former === undefined) return null;
  if (former.low !== null && value < former.low) return 'below';
  return former.high !== null && value > former.high ? 'above' : 'within';
}
