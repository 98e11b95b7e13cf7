import { type LogTails, logOfRest } from './gamma.js';
import { increasingRoot } from './newton.js';
import { logBinomialMass } from './saddle-point.js';

/** A share and its complement, each to full precision however small it is. */
export interface Share {
  readonly share: number;
  readonly rest: number;
}

/** The continued fraction DLMF 8.17.22 by Lentz's method; settles within a few times the root of the larger shape. */
function fraction(a: number, b: number, x: number): number {
  const tiny = 1e-300;
  let c = 1;
  let d = 1 - ((a + b) * x) / (a + 1);
  d = 1 / (Math.abs(d) < tiny ? tiny : d);
  let value = d;
  for (let m = 1; m < 1e6; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / (1 + even * d);
    c = 1 + even / c;
    value *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / (1 + odd * d);
    c = 1 + odd / c;
    const change = d * c;
    value *= change;
    if (Math.abs(change - 1) < 3e-16) return value;
  }
  throw new Error(`the beta fraction did not settle at ${x}, shapes ${a} and ${b}`);
}

/** Log of xᵃ yᵇ / B(a, b). */
function logKernel(a: number, b: number, x: number, y: number): number {
  return logBinomialMass(a, b, x, y) + Math.log(a) + Math.log(b / (a + b));
}

/** Logs of the chances that a beta variable lies below and above x, where y = 1 − x is given too. */
export function betaLogTails(x: number, y: number, a: number, b: number): LogTails {
  if (!(a > 0 && b > 0)) throw new RangeError(`beta shapes must be above 0, not ${a} and ${b}`);
  if (x <= 0) return { below: Number.NEGATIVE_INFINITY, above: 0 };
  if (y <= 0) return { below: 0, above: Number.NEGATIVE_INFINITY };
  const kernel = logKernel(a, b, x, y);
  if (x <= (a + 1) / (a + b + 2)) {
    const below = Math.min(0, kernel - Math.log(a) + Math.log(fraction(a, b, x)));
    return { below, above: logOfRest(below) };
  }
  const above = Math.min(0, kernel - Math.log(b) + Math.log(fraction(b, a, y)));
  return { below: logOfRest(above), above };
}

/** The chance that a beta variable with these shapes is at most x: the regularised incomplete beta function. */
export function betaCumulative(x: number, a: number, b: number): number {
  return Math.exp(betaLogTails(x, 1 - x, a, b).below);
}

/** The density of the log odds of a beta variable with these shapes, at the odds x by y, where y = 1 − x is given too. */
export function betaLogOddsDensity(x: number, y: number, a: number, b: number): number {
  return Math.exp(logKernel(a, b, x, y));
}

/**
 * The share below which a beta variable falls with this chance, with its complement; Newton on log odds and log chance.
 */
export function betaQuantileShare(chance: number, a: number, b: number): Share {
  if (chance > 0.5) {
    const mirrored = betaQuantileShare(1 - chance, b, a);
    return { share: mirrored.rest, rest: mirrored.share };
  }
  if (!(chance > 0)) return { share: 0, rest: 1 };
  const wanted = Math.log(chance);
  const root = increasingRoot(
    (u) => {
      const x = 1 / (1 + Math.exp(-u));
      const y = 1 / (1 + Math.exp(u));
      const { below } = betaLogTails(x, y, a, b);
      return { value: below - wanted, slope: Math.exp(logKernel(a, b, x, y) - below) };
    },
    Math.log(a / b),
  );
  return { share: 1 / (1 + Math.exp(-root)), rest: 1 / (1 + Math.exp(root)) };
}

/** The x below which a beta variable with these shapes falls with this chance. */
export function betaQuantile(chance: number, a: number, b: number): number {
  return betaQuantileShare(chance, a, b).share;
}
