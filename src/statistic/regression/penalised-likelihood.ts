import { lowerFactor, solveSymmetric } from '../linear.js';

/** One kind of trial: the columns that are not 0 with their values, and how many trials there were and were cases. */
export interface CovariatePattern {
  readonly columns: readonly number[];
  readonly values: readonly number[];
  readonly cases: number;
  readonly trials: number;
}

/** Where a climb ended: the coefficients, the penalised log likelihood there, and the information. */
export interface Summit {
  readonly coefficients: readonly number[];
  readonly logLikelihood: number;
  /** The modified score: 0 at the top, but for a coefficient held. */
  readonly score: readonly number[];
  readonly information: readonly (readonly number[])[];
}

/** The inverse from the lower factor. */
function inverseFrom(factor: readonly Float64Array[]): Float64Array[] {
  const size = factor.length;
  const lower = factor.map(() => new Float64Array(size));
  for (let column = 0; column < size; column += 1) {
    for (let i = column; i < size; i += 1) {
      let sum = i === column ? 1 : 0;
      for (let k = column; k < i; k += 1) sum -= factor[i]![k]! * lower[k]![column]!;
      lower[i]![column] = sum / factor[i]![i]!;
    }
  }
  const inverse = factor.map(() => new Float64Array(size));
  for (let i = 0; i < size; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let sum = 0;
      for (let k = i; k < size; k += 1) sum += lower[k]![i]! * lower[k]![j]!;
      inverse[i]![j] = sum;
      inverse[j]![i] = sum;
    }
  }
  return inverse;
}

interface Slope {
  readonly logLikelihood: number;
  readonly information: readonly Float64Array[];
  readonly score: Float64Array;
}

/** log(1 + eˣ) without overflow. */
function softPlus(x: number): number {
  return Math.max(0, x) + Math.log1p(Math.exp(-Math.abs(x)));
}

/** The penalised log likelihood, its modified score and the information; null where the information is singular. */
function slopeAt(patterns: readonly CovariatePattern[], at: readonly number[]): Slope | null {
  const information = at.map(() => new Float64Array(at.length));
  const chances = new Float64Array(patterns.length);
  let logLikelihood = 0;
  patterns.forEach(({ columns, values, cases, trials }, index) => {
    let predictor = 0;
    for (let k = 0; k < columns.length; k += 1) predictor += values[k]! * at[columns[k]!]!;
    const chance = 1 / (1 + Math.exp(-predictor));
    chances[index] = chance;
    logLikelihood += cases * predictor - trials * softPlus(predictor);
    const weight = trials * chance * (1 - chance);
    for (let k = 0; k < columns.length; k += 1) {
      const row = information[columns[k]!]!;
      for (let l = 0; l < columns.length; l += 1) row[columns[l]!]! += weight * values[k]! * values[l]!;
    }
  });
  const factor = lowerFactor(information, 1e-13);
  if (factor === null) return null;
  const inverse = inverseFrom(factor);
  const score = new Float64Array(at.length);
  patterns.forEach(({ columns, values, cases, trials }, index) => {
    const chance = chances[index]!;
    let leverage = 0;
    for (let k = 0; k < columns.length; k += 1) {
      const row = inverse[columns[k]!]!;
      for (let l = 0; l < columns.length; l += 1) leverage += values[k]! * values[l]! * row[columns[l]!]!;
    }
    leverage *= trials * chance * (1 - chance);
    const residual = cases - trials * chance + leverage * (0.5 - chance);
    for (let k = 0; k < columns.length; k += 1) score[columns[k]!]! += residual * values[k]!;
  });
  const penalty = factor.reduce((sum, row, i) => sum + Math.log(row[i]!), 0);
  return { logLikelihood: logLikelihood + penalty, information, score };
}

/** No coefficient moves further than this in one step. */
const LONGEST_STEP = 5;

/**
 * The top of the penalised log likelihood log L + ½ log |information|, climbed from a start by Newton's steps on the
 * modified score, halved until it rises; a coefficient `held` stays where it is while the others climb. Null where the
 * columns depend on each other or 200 steps do not settle. Firth D (1993) Biometrika 80:27-38.
 */
export function climbPenalised(
  patterns: readonly CovariatePattern[],
  start: readonly number[],
  held: number | null = null,
): Summit | null {
  let at = start;
  let here = slopeAt(patterns, at);
  const free = start.map((_, i) => i).filter((i) => i !== held);
  for (let steps = 0; here !== null && steps < 200; steps += 1) {
    const { logLikelihood, information, score } = here;
    const step = solveSymmetric(
      free.map((i) => free.map((j) => information[i]![j]!)),
      free.map((i) => score[i]!),
    );
    if (step === null) return null;
    const longest = step.reduce((most, part) => Math.max(most, Math.abs(part)), 0);
    const climbed = longest < 1e-7 ? null : risen(patterns, at, here, free, step, longest);
    if (climbed === null) {
      // Nothing higher along the way up: the top to working precision, unless the way was still long.
      const rows = information.map((row) => Array.from(row));
      return longest < 1e-5 ? { coefficients: at, logLikelihood, score: Array.from(score), information: rows } : null;
    }
    at = climbed.at;
    here = climbed.slope;
  }
  return null;
}

/** The first point along a step, halved again and again, that lies higher; null where none does. */
function risen(
  patterns: readonly CovariatePattern[],
  at: readonly number[],
  here: Slope,
  free: readonly number[],
  step: readonly number[],
  longest: number,
): { readonly at: readonly number[]; readonly slope: Slope } | null {
  for (let scale = Math.min(1, LONGEST_STEP / longest); scale > 1e-10; scale /= 2) {
    const moved = [...at];
    free.forEach((i, k) => {
      moved[i] = at[i]! + scale * step[k]!;
    });
    const slope = slopeAt(patterns, moved);
    if (slope === null) continue;
    const rise = slope.logLikelihood - here.logLikelihood;
    // The penalty bends the top more than the information says: a step that gains little for its length overshoots.
    const due = free.reduce((sum, i, k) => sum + 0.25 * scale * step[k]! * here.score[i]!, 0);
    // So near the top that heights are told apart no longer, the smaller score is the nearer point.
    const flat = Math.abs(rise) <= 1e-12 * Math.max(1, Math.abs(here.logLikelihood));
    if (flat ? 2 * steepness(slope, free) < steepness(here, free) : rise >= due) return { at: moved, slope };
  }
  return null;
}

function steepness({ score }: Slope, free: readonly number[]): number {
  return free.reduce((most, i) => Math.max(most, Math.abs(score[i]!)), 0);
}
