import { studentUpperQuantile } from '../distribution/student.js';
import type { Interval } from '../estimate.js';
import { tailBeyond, twoSided } from '../interval.js';
import { checkSameLength } from '../same-length.js';
import { sumOf } from '../summary.js';

/** A ratio of two totals over the same units, such as dollars and inspections by station. */
export interface RatioOfTotals {
  /** Null where the denominator adds up to 0. */
  readonly value: number | null;
  /** By the delta method; null under two units. */
  readonly standardError: number | null;
  /** By leaving out one unit at a time; null under two units or where the rest adds up to 0. */
  readonly jackknifeError: number | null;
  /** Fieller's; null where the denominator could be 0 at this confidence, since the limits then are no interval. */
  readonly interval: Interval | null;
}

/**
 * The ratio Σy / Σx over units drawn together. Fieller EC (1954) JRSS B 16:175-185, with Student's t on one degree of
 * freedom fewer than units; jackknife: Efron B (1982) The Jackknife, the Bootstrap and Other Resampling Plans, eq. 3.2.
 */
export function fiellerRatio(y: readonly number[], x: readonly number[], confidence = 0.95): RatioOfTotals {
  checkSameLength({ numerators: y, denominators: x });
  const n = x.length;
  const [sumY, sumX] = [sumOf(y), sumOf(x)];
  const nothing = { standardError: null, jackknifeError: null, interval: null };
  if (sumX === 0) return { value: null, ...nothing };
  const value = sumY / sumX;
  if (n < 2) return { value, ...nothing };
  const [meanY, meanX] = [sumY / n, sumX / n];
  const residuals = y.map((amount, i) => amount - value * x[i]!);
  const standardError = Math.sqrt(sumOf(residuals.map((r) => r * r)) / (n - 1) / n) / Math.abs(meanX);
  const covariance = (a: readonly number[], b: readonly number[], meanA: number, meanB: number) =>
    sumOf(a.map((amount, i) => (amount - meanA) * (b[i]! - meanB))) / (n - 1) / n;
  const t = studentUpperQuantile(tailBeyond(confidence), n - 1);
  const a = meanX * meanX - t * t * covariance(x, x, meanX, meanX);
  const b = meanY * meanX - t * t * covariance(y, x, meanY, meanX);
  const c = meanY * meanY - t * t * covariance(y, y, meanY, meanY);
  const root = Math.sqrt(Math.max(0, b * b - a * c));
  const interval = a > 0 ? twoSided((b - root) / a, (b + root) / a, confidence, 'Fieller') : null;
  return { value, standardError, jackknifeError: jackknifeError(y, x, sumY, sumX), interval };
}

function jackknifeError(y: readonly number[], x: readonly number[], sumY: number, sumX: number): number | null {
  const n = x.length;
  const without = y.map((amount, i) => (sumY - amount) / (sumX - x[i]!));
  const mean = sumOf(without) / n;
  const error = Math.sqrt(((n - 1) / n) * sumOf(without.map((ratio) => (ratio - mean) ** 2)));
  return Number.isFinite(error) ? error : null;
}
