import { solveSymmetric } from '../linear.js';

/** Intercept and slope of a generalised line, with the slope's standard error from the last weighted fit. */
export interface FittedLine {
  readonly intercept: number;
  readonly slope: number;
  readonly slopeStandardError: number;
}

/** Mean and weight (its derivative) of each observation at a linear predictor. */
export interface MeanAndWeight {
  readonly mean: number;
  readonly weight: number;
}

/** How counts depend on the linear predictor of each, under the link that is natural to them. */
export interface Family {
  /** The predictor to start each observation from. */
  readonly start: (index: number) => number;
  readonly expect: (predictor: number, index: number) => MeanAndWeight;
  /** Whether two rounds of predictors are near enough to stop. */
  readonly settled: (before: readonly number[], after: readonly number[]) => boolean;
}

/**
 * The likeliest line for counts over scores by iteratively reweighted least squares; null where the scores are all the
 * same or 100 rounds do not settle, as when the scores separate cases from others. McCullagh P, Nelder JA (1989)
 * Generalized Linear Models, section 2.5.
 */
export function fitLine(counts: readonly number[], scores: readonly number[], family: Family): FittedLine | null {
  const center = scores.reduce((sum, score) => sum + score, 0) / scores.length;
  const centered = scores.map((score) => score - center);
  let predictors: readonly number[] = counts.map((_, i) => family.start(i));
  for (let rounds = 0; rounds < 100; rounds += 1) {
    const fitted = weightedFit(counts, centered, predictors, family);
    if (fitted === null) return null;
    const { level, slope, slopeStandardError } = fitted;
    const next = centered.map((score) => level + slope * score);
    if (family.settled(predictors, next)) return { intercept: level - slope * center, slope, slopeStandardError };
    predictors = next;
  }
  return null;
}

/** One weighted least-squares fit of the working responses. */
function weightedFit(
  counts: readonly number[],
  scores: readonly number[],
  predictors: readonly number[],
  family: Family,
) {
  let [sum, sumScore, sumSquare, response, responseScore] = [0, 0, 0, 0, 0];
  counts.forEach((count, i) => {
    const score = scores[i]!;
    const predictor = predictors[i]!;
    const { mean, weight } = family.expect(predictor, i);
    const working = weight * predictor + count - mean;
    sum += weight;
    sumScore += weight * score;
    sumSquare += weight * score * score;
    response += working;
    responseScore += working * score;
  });
  const information = [
    [sum, sumScore],
    [sumScore, sumSquare],
  ];
  const [level, slope] = solveSymmetric(information, [response, responseScore]) ?? [];
  const [, variance] = solveSymmetric(information, [0, 1]) ?? [];
  if (level === undefined || slope === undefined || variance === undefined) return null;
  return { level, slope, slopeStandardError: Math.sqrt(variance) };
}
