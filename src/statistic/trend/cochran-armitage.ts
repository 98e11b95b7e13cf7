import { chiSquaredUpper } from '../distribution/chi-squared.js';
import { normalTwoSided } from '../distribution/normal.js';
import { checkCounts } from '../proportion/counts.js';
import { checkSameLength } from '../same-length.js';

/** A linear trend in proportions over scores. All but the degrees of freedom null where nothing varies. */
export interface LinearTrend {
  /** Change of the proportion by one unit of score, by weighted least squares. */
  readonly slope: number | null;
  readonly z: number | null;
  readonly chiSquared: number | null;
  readonly p: number | null;
  /** With the variance of sampling without replacement: Mantel's extension. */
  readonly zMantel: number | null;
  readonly pMantel: number | null;
  /** What the straight line leaves unexplained; null p under three groups. */
  readonly departure: number | null;
  readonly departureDegreesOfFreedom: number;
  readonly pDeparture: number | null;
}

/**
 * The test of a linear trend in x of n over scores such as seasons. Armitage P (1955) Biometrics 11:375-386; Mantel N
 * (1963) JASA 58:690-700.
 */
export function cochranArmitage(x: readonly number[], n: readonly number[], scores: readonly number[]): LinearTrend {
  checkSameLength({ cases: x, trials: n, scores });
  x.forEach((cases, i) => {
    checkCounts(cases, n[i]!);
  });
  const sum = (term: (i: number) => number) => n.reduce((total, _, i) => total + term(i), 0);
  const at = (list: readonly number[], i: number) => list[i]!;
  const all = sum((i) => at(n, i));
  const share = sum((i) => at(x, i)) / all;
  const middle = sum((i) => at(n, i) * at(scores, i)) / all;
  const spread = sum((i) => at(n, i) * (at(scores, i) - middle) ** 2);
  const departureDegreesOfFreedom = Math.max(0, n.filter((trials) => trials > 0).length - 2);
  if (!(share > 0 && share < 1 && spread > 0)) {
    const nothing = { slope: null, z: null, chiSquared: null, p: null, zMantel: null, pMantel: null };
    return { ...nothing, departure: null, departureDegreesOfFreedom, pDeparture: null };
  }
  const covariance = sum((i) => (at(x, i) - at(n, i) * share) * (at(scores, i) - middle));
  const z = covariance / Math.sqrt(share * (1 - share) * spread);
  const zMantel = z * Math.sqrt((all - 1) / all);
  const any = sum((i) => (at(n, i) === 0 ? 0 : (at(x, i) - at(n, i) * share) ** 2 / (at(n, i) * share * (1 - share))));
  const departure = Math.max(0, any - z * z);
  return {
    slope: covariance / spread,
    z,
    chiSquared: z * z,
    p: normalTwoSided(z),
    zMantel,
    pMantel: normalTwoSided(zMantel),
    departure,
    departureDegreesOfFreedom,
    pDeparture: departureDegreesOfFreedom === 0 ? null : chiSquaredUpper(departure, departureDegreesOfFreedom),
  };
}
