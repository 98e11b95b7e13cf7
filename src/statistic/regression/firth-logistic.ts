import { chiSquaredUpper } from '../distribution/chi-squared.js';
import type { Interval } from '../estimate.js';
import { normalZ, twoSided } from '../interval.js';
import { solveSymmetric } from '../linear.js';
import { type CovariatePattern, climbPenalised } from './penalised-likelihood.js';

/** One coefficient of a penalised logistic model, on the scale of log odds. */
export interface PenalisedCoefficient {
  readonly value: number;
  /** From the information at the top. */
  readonly standardError: number;
  /** Where the profile of the penalised likelihood has fallen by what chance allows; an end is null where it does not. */
  readonly interval: Interval;
  /** Penalised likelihood ratio test of 0; null where the rest of the model cannot be fitted alone. */
  readonly p: number | null;
}

/** A penalised logistic model. */
export interface PenalisedLogistic {
  readonly coefficients: readonly PenalisedCoefficient[];
  readonly logLikelihood: number;
}

const METHOD = 'penalised logistic, profile likelihood (Firth)';

/** How far the profile lies below the top with a coefficient held there, as a root, and how fast the root grows. */
type Profile = (held: number) => { readonly root: number; readonly growth: number } | null;

/** Where the root reaches z on one side, by Newton's steps on the root, which is nearly straight, within a bracket. */
function profileLimit(profile: Profile, top: number, spread: number, z: number, side: -1 | 1): number {
  let inside = 0;
  let outside = Number.POSITIVE_INFINITY;
  let distance = z * spread;
  for (let tries = 0; tries < 100; tries += 1) {
    const found = profile(top + side * distance);
    // Too far out for the climb to settle: nearer, unless nothing lies between any more.
    const root = found === null ? Number.POSITIVE_INFINITY : found.root;
    if (Math.abs(root - z) < 1e-6 || outside - inside < 1e-10)
      return found === null ? Number.NaN : top + side * distance;
    if (root < z) inside = distance;
    else outside = distance;
    const guess = found === null || !(found.growth > 0) ? Number.NaN : distance + (z - root) / found.growth;
    const most = Number.isFinite(outside) ? outside : 3 * distance;
    distance = guess > inside && guess < most ? guess : Number.isFinite(outside) ? (inside + outside) / 2 : most;
  }
  return Number.NaN;
}

/**
 * A logistic model of cases over covariate patterns with Firth's penalty, which keeps every coefficient finite where
 * cases are few or a factor has none. One coefficient a column; a level that all share is a column of 1. Null where the
 * columns depend on each other, or without trials. Firth D (1993) Biometrika 80:27-38; profile limits: Heinze G,
 * Schemper M (2002) Statistics in Medicine 21:2409-2419.
 */
export function firthLogistic(
  patterns: readonly CovariatePattern[],
  columns: number,
  confidence = 0.95,
): PenalisedLogistic | null {
  const start = Array.from({ length: columns }, () => 0);
  const summit = climbPenalised(patterns, start);
  if (summit === null) return null;
  const z = normalZ(confidence);
  const coefficient = (at: number): PenalisedCoefficient => {
    const unit = start.map((_, i) => (i === at ? 1 : 0));
    const spread = Math.sqrt(solveSymmetric(summit.information, unit)?.[at] ?? Number.NaN);
    const top = summit.coefficients[at]!;
    let warm = summit.coefficients;
    const profile: Profile = (held) => {
      const from = warm.map((value, i) => (i === at ? held : value));
      const found = climbPenalised(patterns, from, at);
      if (found === null) return null;
      warm = found.coefficients;
      const root = Math.sqrt(2 * Math.max(0, summit.logLikelihood - found.logLikelihood));
      return { root, growth: Math.abs(found.score[at]!) / Math.max(root, 1e-12) };
    };
    const low = profileLimit(profile, top, spread, z, -1);
    warm = summit.coefficients;
    const high = profileLimit(profile, top, spread, z, 1);
    warm = summit.coefficients;
    const nothing = profile(0);
    return {
      value: top,
      standardError: spread,
      interval: twoSided(low, high, confidence, METHOD),
      p: nothing === null ? null : chiSquaredUpper(nothing.root ** 2, 1),
    };
  };
  return { coefficients: start.map((_, at) => coefficient(at)), logLikelihood: summit.logLikelihood };
}
