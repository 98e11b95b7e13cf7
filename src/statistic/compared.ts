import type { Interval } from './estimate.js';

/** A value made from two or more groups, such as a difference or a ratio. */
export interface Compared {
  /** Null where it is not defined or not finite. */
  readonly value: number | null;
  /** Null where the method cannot give one; a single end is null where it is not reached. */
  readonly interval: Interval | null;
}
