import type { Interval } from '../estimate.js';
import { finiteOrNull, twoSided } from '../interval.js';
import { clopperPearson } from '../proportion/clopper-pearson.js';
import { midP } from '../proportion/mid-p.js';
import { logRatio } from '../ratio/wald.js';

/** An odds ratio of pairs under three kinds of limits. */
export interface PairedOddsRatio {
  /** Null where no pair went the second way. */
  readonly value: number | null;
  readonly exact: Interval;
  readonly midP: Interval;
  /** Null where either kind of pair is missing. */
  readonly wald: Interval | null;
}

/**
 * The odds b / c of pairs that disagree; Breslow NE, Day NE (1980) Statistical Methods in Cancer Research I, section
 * 5.2.
 */
export function pairedOddsRatio(b: number, c: number, confidence = 0.95): PairedOddsRatio {
  const odds = ({ low, high, method }: Interval) => {
    const of = (p: number | null) => (p === null ? Number.NaN : p / (1 - p));
    return twoSided(of(low), of(high), confidence, `${method} on pairs that disagree`);
  };
  return {
    value: finiteOrNull(b / c),
    exact: odds(clopperPearson(b, b + c, confidence)),
    midP: odds(midP(b, b + c, confidence)),
    wald: logRatio(b / c, Math.sqrt(1 / b + 1 / c), confidence, 'log odds, Wald').interval,
  };
}
