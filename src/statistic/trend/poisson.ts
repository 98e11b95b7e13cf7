import type { Compared } from '../compared.js';
import { normalTwoSided } from '../distribution/normal.js';
import { devianceFrom } from '../distribution/saddle-point.js';
import { logRatio } from '../ratio/wald.js';
import { checkSameLength } from '../same-length.js';
import { type FittedLine, fitLine } from './line.js';

/** A straight line in the log rate of events. */
export interface PoissonTrend extends FittedLine {
  readonly pWald: number;
  /** The rate at one more unit of score by the rate before. */
  readonly rateRatio: Compared;
  /**
   * Pearson's chi-squared by its degrees of freedom: well above 1, the limits are too narrow; null under three groups.
   */
  readonly dispersion: number | null;
}

/**
 * The log rate of events over exposures, all above 0, as a line over scores; null without events or where all scores
 * are the same. McCullagh P, Nelder JA (1989) Generalized Linear Models, chapter 6.
 */
export function poissonTrend(
  events: readonly number[],
  exposures: readonly number[],
  scores: readonly number[],
  confidence = 0.95,
): PoissonTrend | null {
  checkSameLength({ events, exposures, scores });
  if (!exposures.every((exposure) => exposure > 0)) throw new RangeError('an exposure is not above 0');
  if (!events.some((count) => count > 0)) return null;
  const meanAt = (predictor: number, i: number) => exposures[i]! * Math.exp(predictor);
  const deviance = (predictors: readonly number[]) =>
    events.reduce((sum, count, i) => {
      const mean = meanAt(predictors[i]!, i);
      return sum + 2 * devianceFrom(count, mean);
    }, 0);
  const line = fitLine(events, scores, {
    start: (i) => Math.log((events[i]! + 0.1) / exposures[i]!),
    expect: (predictor, i) => {
      const mean = meanAt(predictor, i);
      return { mean, weight: mean };
    },
    // The start and the stop of R's glm, to agree with it in every digit it gives; going on would move the standard
    // error by a few parts in 1e8.
    settled: (before, after) => {
      const now = deviance(after);
      return Math.abs(now - deviance(before)) < 1e-8 * (now + 0.1);
    },
  });
  if (line === null) return null;
  const pearson = events.reduce((sum, count, i) => {
    const mean = meanAt(line.intercept + line.slope * scores[i]!, i);
    return sum + (count - mean) ** 2 / mean;
  }, 0);
  return {
    ...line,
    pWald: normalTwoSided(line.slope / line.slopeStandardError),
    rateRatio: logRatio(Math.exp(line.slope), line.slopeStandardError, confidence, 'Poisson trend, Wald'),
    dispersion: events.length > 2 ? pearson / (events.length - 2) : null,
  };
}
