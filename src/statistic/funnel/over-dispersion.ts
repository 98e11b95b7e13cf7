import { quantile } from '../quantile.js';
import { checkSameLength } from '../same-length.js';

/** How far stations spread beyond chance around a target. */
export interface OverDispersion {
  readonly z: readonly number[];
  /** Mean of z squared: 1 where only chance is at work. */
  readonly factor: number;
  /** The same after drawing the outermost tenths in, so that a few strays do not widen every limit. */
  readonly factorWinsorised: number;
  /**
   * Variance between stations on the scale of proportions, by the method of moments; 0 where there is no excess or one
   * station.
   */
  readonly betweenVariance: number;
}

/**
 * Over-dispersion of cases x of trials n around a target strictly between 0 and 1; all n above 0. Null without
 * stations. Spiegelhalter DJ (2005) Statistics in Medicine 24:1185-1202, appendix A.3; DerSimonian R, Laird N (1986)
 * Controlled Clinical Trials 7:177-188.
 */
export function overDispersion(x: readonly number[], n: readonly number[], target: number): OverDispersion | null {
  checkSameLength({ cases: x, trials: n });
  if (x.length === 0) return null;
  if (!(target > 0 && target < 1 && n.every((trials) => trials > 0))) throw new RangeError(`a target of ${target}`);
  const weights = n.map((trials) => trials / (target * (1 - target)));
  const z = x.map((cases, i) => (cases / n[i]! - target) * Math.sqrt(weights[i]!));
  const sorted = [...z].sort((a, b) => a - b);
  const [low, high] = [quantile(sorted, 0.1)!, quantile(sorted, 0.9)!];
  const squares = (list: readonly number[]) => list.reduce((sum, value) => sum + value * value, 0);
  const drawn = z.map((value) => Math.min(high, Math.max(low, value)));
  const factorWinsorised = squares(drawn) / z.length;
  const sum = weights.reduce((total, weight) => total + weight, 0);
  const excess = z.length * factorWinsorised - (z.length - 1);
  return {
    z,
    factor: squares(z) / z.length,
    factorWinsorised,
    betweenVariance: z.length < 2 ? 0 : Math.max(0, excess / (sum - squares(weights) / sum)),
  };
}
