/**
 * Limits of a value; null at an end that is not reached. `sides` is `upper` for a one-sided upper limit and `lower` for
 * a one-sided lower limit; the other end then is that of the scale.
 */
export interface Interval {
  readonly low: number | null;
  readonly high: number | null;
  /** The confidence, such as 0.95. */
  readonly confidence: number;
  readonly sides: 'two' | 'upper' | 'lower';
  /** The method in words, with what a reader needs to check it: `Wilson score`. */
  readonly method: string;
}

/** A value with what it stands on. Either an interval, or the reason why there is none. */
export interface Estimate {
  /** Null where it is not defined or withheld; `why` says so. */
  readonly value: number | null;
  readonly numerator: number | null;
  readonly denominator: number | null;
  readonly interval: Interval | null;
  /** Why there is no value or no interval; null where both are there. */
  readonly why: string | null;
  /** Warnings a reader must see: `under 20 clusters`. */
  readonly cautions: readonly string[];
}
