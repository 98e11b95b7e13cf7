import type { Interval } from '../estimate.js';
import { tailBeyond } from '../interval.js';

/** The exact one-sided upper limit 1 − (1 − confidence)^(1/n) beside 3/n, its rule of thumb at 95 %. */
export interface ZeroCases {
  readonly interval: Interval;
  /** 3/n, at most 1; made for 95 % and given whatever the confidence. */
  readonly ruleOfThree: number;
}

/**
 * How large a proportion can be when none of n trials, at least one, was a case. Hanley JA, Lippman-Hand A (1983) JAMA
 * 249:1743-1745.
 */
export function zeroUpper(n: number, confidence = 0.95): ZeroCases {
  if (!(n > 0 && Number.isFinite(n))) throw new RangeError(`no upper limit from ${n} trials`);
  const high = -Math.expm1(Math.log(2 * tailBeyond(confidence)) / n);
  const method = 'exact one-sided upper limit, zero cases';
  return { interval: { low: 0, high, confidence, sides: 'upper', method }, ruleOfThree: Math.min(1, 3 / n) };
}

/** How small a proportion can be when every one of n trials, at least one, was a case: the mirror of `zeroUpper`. */
export function everyLower(n: number, confidence = 0.95): Interval {
  if (!(n > 0 && Number.isFinite(n))) throw new RangeError(`no lower limit from ${n} trials`);
  const low = Math.exp(Math.log(2 * tailBeyond(confidence)) / n);
  return { low, high: 1, confidence, sides: 'lower', method: 'exact one-sided lower limit, every trial a case' };
}
