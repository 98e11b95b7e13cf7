import type { Compared } from '../compared.js';
import { normalTwoSided } from '../distribution/normal.js';
import { checkCounts } from '../proportion/counts.js';
import { logRatio } from '../ratio/wald.js';
import { checkSameLength } from '../same-length.js';
import { type FittedLine, fitLine } from './line.js';

/** A straight line in the log odds of cases. */
export interface LogisticTrend extends FittedLine {
  readonly pWald: number;
  /** Odds at one more unit of score by odds before. */
  readonly oddsRatio: Compared;
  /** Twice the gain in log likelihood over a level line, on one degree of freedom. */
  readonly likelihoodRatio: number;
  readonly residualDeviance: number;
}

/** Twice the log likelihood that the counts lose against a perfect fit. */
function deviance(x: readonly number[], n: readonly number[], chance: (i: number) => number): number {
  return x.reduce((total, cases, i) => {
    const trials = n[i]!;
    const p = chance(i);
    const found = cases === 0 ? 0 : cases * Math.log(cases / (trials * p));
    const other = cases === trials ? 0 : (trials - cases) * Math.log((trials - cases) / (trials * (1 - p)));
    return total + 2 * (found + other);
  }, 0);
}

/**
 * The log odds of x of n as a line over scores; null where every trial or none was a case, where all scores are the
 * same, or where the scores separate cases from others. Agresti A (2013) Categorical Data Analysis, 3rd ed., section
 * 5.3.4.
 */
export function logisticTrend(
  x: readonly number[],
  n: readonly number[],
  scores: readonly number[],
  confidence = 0.95,
): LogisticTrend | null {
  checkSameLength({ cases: x, trials: n, scores });
  x.forEach((cases, i) => {
    checkCounts(cases, n[i]!);
  });
  const share = x.reduce((sum, cases) => sum + cases, 0) / n.reduce((sum, trials) => sum + trials, 0);
  if (!(share > 0 && share < 1)) return null;
  const chanceAt = (predictor: number) => 1 / (1 + Math.exp(-predictor));
  const line = fitLine(x, scores, {
    start: (i) => Math.log((x[i]! + 0.5) / (n[i]! - x[i]! + 0.5)),
    expect: (predictor, i) => {
      const p = chanceAt(predictor);
      const trials = n[i]!;
      return { mean: trials * p, weight: trials * p * (1 - p) };
    },
    settled: (before, after) => after.every((predictor, i) => Math.abs(predictor - before[i]!) < 1e-10),
  });
  if (line === null) return null;
  const residualDeviance = deviance(x, n, (i) => chanceAt(line.intercept + line.slope * scores[i]!));
  return {
    ...line,
    pWald: normalTwoSided(line.slope / line.slopeStandardError),
    oddsRatio: logRatio(Math.exp(line.slope), line.slopeStandardError, confidence, 'logistic trend, Wald'),
    likelihoodRatio: deviance(x, n, () => share) - residualDeviance,
    residualDeviance,
  };
}
