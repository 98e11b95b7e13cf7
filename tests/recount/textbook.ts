/**
 * The distributions and intervals that the recount needs, written from the textbook: nothing of the program is used here.
 * Beta: Abramowitz M, Stegun IA (1964) Handbook of Mathematical Functions, 26.5.8, by the modified Lentz method (Press WH and
 * others, Numerical Recipes, 5.2 and 6.4, from memory). Log gamma: Lanczos C (1964) SIAM J Numer Anal B 1:86-96, g 7, 9 terms
 * (from memory; every value that hangs on them is held to the page's to six digits).
 */

/** The upper 97.5 % point of the standard normal: Abramowitz and Stegun, table 26.5. */
export const z95 = 1.959963984540054;

/** What a share of clustered trials stands on: counts, clusters with trials, sum of squared residuals of the clusters. */
export interface ClusteredCounts {
  readonly cases: number;
  readonly trials: number;
  readonly clusters: number;
  readonly residuals: number;
}

/** A value with its limits, as a page carries it in a cell. */
export type Triple = readonly [value: number, low: number, high: number];

const lanczos = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];

function logGamma(x: number): number {
  const shifted = x + 6.5;
  const sum = lanczos.slice(1).reduce((total, term, at) => total + term / (x + at), lanczos[0]!);
  return 0.5 * Math.log(2 * Math.PI) + (x - 0.5) * Math.log(shifted) - shifted + Math.log(sum);
}

/** The continued fraction of the incomplete beta function. */
function betaFraction(a: number, b: number, x: number): number {
  const tiny = 1e-300;
  const kept = (value: number) => (Math.abs(value) < tiny ? tiny : value);
  let c = 1;
  let d = 1 / kept(1 - ((a + b) * x) / (a + 1));
  let fraction = d;
  for (let m = 1; m < 100_000; m++) {
    for (const term of [
      (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m)),
      (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1)),
    ]) {
      d = 1 / kept(1 + term * d);
      c = kept(1 + term / c);
      fraction *= d * c;
    }
    if (Math.abs(d * c - 1) < 1e-15) break;
  }
  return fraction;
}

/** The chance that a beta variable with parameters a and b lies at or below x. */
function betaBelow(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  return x < (a + 1) / (a + b + 2) ? (front * betaFraction(a, b, x)) / a : 1 - (front * betaFraction(b, a, 1 - x)) / b;
}

/** Where a rising function passes a level, by halving. */
function crossing(rising: (x: number) => number, level: number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (let step = 0; step < 64; step++) {
    const middle = (low + high) / 2;
    if (rising(middle) < level) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Exact limits of a share; the counts need not be whole. Clopper CJ, Pearson ES (1934) Biometrika 26:404-413. */
export function exactLimits(cases: number, trials: number): readonly [number, number] {
  const low = cases <= 0 ? 0 : crossing((x) => betaBelow(x, cases, trials - cases + 1), 0.025, 0, 1);
  const high = cases >= trials ? 1 : crossing((x) => betaBelow(x, cases + 1, trials - cases), 0.975, 0, 1);
  return [low, high];
}

/** The upper 97.5 % point of Student's t. Abramowitz and Stegun, 26.7.1. */
function studentPoint(freedom: number): number {
  const below = (t: number) => 1 - betaBelow(freedom / (freedom + t * t), freedom / 2, 0.5) / 2;
  return crossing(below, 0.975, 0, 1000);
}

/**
 * A share of clustered trials: exact limits at the trials that the clusters are worth. Korn EL, Graubard BI (1998) Survey
 * Methodology 24:193-201, never more than there are trials (Parker JD and others 2017, Vital and Health Statistics 2(175)). With
 * no case, or nothing but cases, one-sided 95 % limits 1 − 0.05^(1/n): Hanley JA, Lippman-Hand A (1983) JAMA 249:1743-1745.
 */
export function clusteredShare({ cases, trials, clusters, residuals }: ClusteredCounts): Triple {
  if (cases === 0) return [0, 0, 1 - 0.05 ** (1 / trials)];
  if (cases === trials) return [1, 0.05 ** (1 / trials), 1];
  const share = cases / trials;
  const variance = ((clusters / (clusters - 1)) * residuals) / trials ** 2;
  const fewer = studentPoint(trials - 1) / studentPoint(clusters - 1);
  const worth = Math.min(trials, ((share * (1 - share)) / variance) * fewer ** 2);
  return [share, ...exactLimits(share * worth, worth)];
}

/** Wilson's limits: Wilson EB (1927) JASA 22:209-212. */
function wilson(cases: number, trials: number): readonly [number, number] {
  const [share, square] = [cases / trials, z95 ** 2 / trials];
  const half = z95 * Math.sqrt((share * (1 - share)) / trials + square / (4 * trials));
  return [(share + square / 2 - half) / (1 + square), (share + square / 2 + half) / (1 + square)];
}

/** A later share less an earlier one: Newcombe RG (1998) Statistics in Medicine 17:873-890, method 10. */
export function difference(later: ClusteredCounts, earlier: ClusteredCounts): readonly number[] {
  const [p1, p2] = [later, earlier].map(({ cases, trials }) => cases / trials) as [number, number];
  const [[l1, u1], [l2, u2]] = [wilson(later.cases, later.trials), wilson(earlier.cases, earlier.trials)];
  return [p1 - p2, p1 - p2 - Math.hypot(p1 - l1, u2 - p2), p1 - p2 + Math.hypot(u1 - p1, p2 - l2)];
}
