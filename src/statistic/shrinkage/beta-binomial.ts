import { betaQuantile, betaQuantileShare } from '../distribution/beta.js';
import { logGamma } from '../distribution/log-gamma.js';
import type { Interval } from '../estimate.js';
import { tailBeyond, twoSided } from '../interval.js';
import { solveSymmetric } from '../linear.js';
import { checkCounts } from '../proportion/counts.js';
import { checkSameLength } from '../same-length.js';

/** A beta distribution of proportions between stations. */
export interface BetaPrior {
  readonly alpha: number;
  readonly beta: number;
}

/** A station's proportion after it has borrowed strength from the others. */
export interface ShrunkProportion extends BetaPrior {
  readonly mean: number;
  readonly standardDeviation: number;
  readonly interval: Interval;
}

/**
 * What the counts of one station make of a prior; Gelman A et al. (2013) Bayesian Data Analysis, 3rd ed., section 2.4.
 */
export function shrunkProportion(x: number, n: number, prior: BetaPrior, confidence = 0.95): ShrunkProportion {
  checkCounts(x, n);
  const alpha = prior.alpha + x;
  const beta = prior.beta + n - x;
  const all = alpha + beta;
  const tail = tailBeyond(confidence);
  const low = betaQuantile(tail, alpha, beta);
  const high = betaQuantileShare(tail, beta, alpha).rest;
  return {
    alpha,
    beta,
    mean: alpha / all,
    standardDeviation: Math.sqrt(((alpha / all) * (beta / all)) / (all + 1)),
    interval: twoSided(low, high, confidence, 'beta posterior, equal tails'),
  };
}

/** The likeliest beta prior of a set of stations. */
export interface BetaBinomialFit extends BetaPrior {
  readonly mean: number;
  /** Correlation of two trials of one station: 1 / (alpha + beta + 1). */
  readonly correlation: number;
  /** With the binomial coefficients. */
  readonly logLikelihood: number;
}

/** Derivatives of log (a)ₖ, the rising product a (a + 1) … (a + k − 1). */
function rising(a: number, k: number): readonly [number, number] {
  let first = 0;
  let second = 0;
  for (let j = 0; j < k; j += 1) {
    const inverse = 1 / (a + j);
    first += inverse;
    second -= inverse * inverse;
  }
  return [first, second];
}

function logLikelihood(x: readonly number[], n: readonly number[], { alpha, beta }: BetaPrior): number {
  const logBeta = (a: number, b: number) => logGamma(a) + logGamma(b) - logGamma(a + b);
  return x.reduce((sum, cases, i) => {
    const others = n[i]! - cases;
    const choose = logGamma(cases + others + 1) - logGamma(cases + 1) - logGamma(others + 1);
    return sum + choose + logBeta(alpha + cases, beta + others) - logBeta(alpha, beta);
  }, 0);
}

/** Gradient and Hessian of the log likelihood in (log alpha, log beta). */
function derivatives(x: readonly number[], n: readonly number[], { alpha, beta }: BetaPrior) {
  let [a1, b1, a2, b2, s2] = [0, 0, 0, 0, 0];
  x.forEach((cases, i) => {
    const trials = n[i]!;
    const [forCases, forOthers] = [rising(alpha, cases), rising(beta, trials - cases)];
    const forAll = rising(alpha + beta, trials);
    a1 += forCases[0] - forAll[0];
    b1 += forOthers[0] - forAll[0];
    a2 += forCases[1] - forAll[1];
    b2 += forOthers[1] - forAll[1];
    s2 -= forAll[1];
  });
  const gradient = [alpha * a1, beta * b1] as const;
  const mixed = alpha * beta * s2;
  const hessian = [
    [alpha * alpha * a2 + gradient[0], mixed],
    [mixed, beta * beta * b2 + gradient[1]],
  ] as const;
  return { gradient, hessian };
}

/**
 * Where the stations agree as well as chance allows, the likelihood rises without end; beyond this there is no prior.
 */
const NO_SPREAD = 1e7;

/**
 * The beta prior under which the whole counts of stations are likeliest; null where no station or every trial is a
 * case, where stations spread no more than chance, so that no finite prior is likeliest, or where 500 steps do not settle.
 * Newton's steps on log alpha and log beta, halved until the likelihood rises. Griffiths DA (1973) Biometrics 29:637-648.
 */
export function betaBinomialFit(x: readonly number[], n: readonly number[]): BetaBinomialFit | null {
  checkSameLength({ cases: x, trials: n });
  const share = x.reduce((a, b) => a + b, 0) / n.reduce((a, b) => a + b, 0);
  if (!(share > 0 && share < 1)) return null;
  let prior: BetaPrior = { alpha: 10 * share, beta: 10 * (1 - share) };
  let best = logLikelihood(x, n, prior);
  for (let steps = 0; steps < 500; steps += 1) {
    const { gradient, hessian } = derivatives(x, n, prior);
    const curved = solveSymmetric(
      hessian.map((row) => row.map((entry) => -entry)),
      gradient,
    );
    const [da = 0, db = 0] = curved ?? gradient;
    const longest = Math.max(Math.abs(da), Math.abs(db), 1e-300);
    let scale = Math.min(1, 2 / longest);
    let next: BetaPrior = prior;
    let value = Number.NEGATIVE_INFINITY;
    for (; scale > 1e-12; scale /= 2) {
      next = { alpha: prior.alpha * Math.exp(scale * da), beta: prior.beta * Math.exp(scale * db) };
      value = logLikelihood(x, n, next);
      if (value >= best - 1e-9) break;
    }
    prior = next;
    best = value;
    if (prior.alpha + prior.beta > NO_SPREAD / share) return null;
    if (curved !== null && longest < 1e-11) {
      const all = prior.alpha + prior.beta;
      return { ...prior, mean: prior.alpha / all, correlation: 1 / (all + 1), logLikelihood: best };
    }
  }
  return null;
}
