import { logGamma } from './log-gamma.js';
import { increasingRoot } from './newton.js';
import { logPoissonMass } from './saddle-point.js';

/** Logs of the chances below and above a point. */
export interface LogTails {
  readonly below: number;
  readonly above: number;
}

/**
 * Log of 1 − exp(logChance), for a chance given by its log; Mächler M (2012) Accurately computing log(1 − exp(−|a|)).
 */
export function logOfRest(logChance: number): number {
  return logChance > -Math.LN2 ? Math.log(-Math.expm1(logChance)) : Math.log1p(-Math.exp(logChance));
}

/** Σ xⁿ / ((a + 1) … (a + n)); DLMF 8.11.4. */
function lowerSeries(x: number, shape: number): number {
  let term = 1;
  let total = 1;
  for (let n = 1; n < 1e6; n += 1) {
    term *= x / (shape + n);
    total += term;
    if (term < total * 1e-17) return total;
  }
  throw new Error(`the gamma series did not settle at ${x}, shape ${shape}`);
}

/** Legendre's continued fraction by Lentz's method; DLMF 8.9.2, Thompson & Barnett (1986) J Comput Phys 64:490-509. */
function upperFraction(x: number, shape: number): number {
  let b = x + 1 - shape;
  let c = 1e300;
  let d = 1 / b;
  let fraction = d;
  for (let n = 1; n < 1e6; n += 1) {
    const a = -n * (n - shape);
    b += 2;
    d = 1 / (a * d + b);
    c = b + a / c;
    const change = c * d;
    fraction *= change;
    if (Math.abs(change - 1) < 3e-16) return fraction;
  }
  throw new Error(`the gamma fraction did not settle at ${x}, shape ${shape}`);
}

/** Logs of the chances that a gamma variable of this shape and scale 1 lies below and above x. */
export function gammaLogTails(x: number, shape: number): LogTails {
  if (!(shape > 0)) throw new RangeError(`a gamma shape must be above 0, not ${shape}`);
  if (!(x > 0)) return { below: Number.NEGATIVE_INFINITY, above: 0 };
  if (x === Number.POSITIVE_INFINITY) return { below: 0, above: Number.NEGATIVE_INFINITY };
  const mass = logPoissonMass(shape, x);
  if (x < shape + 1) {
    const below = Math.min(0, mass + Math.log(lowerSeries(x, shape)));
    return { below, above: logOfRest(below) };
  }
  const above = Math.min(0, mass + Math.log(shape) + Math.log(upperFraction(x, shape)));
  return { below: logOfRest(above), above };
}

/** The chance that a gamma variable of this shape and scale 1 is at most x. */
export function gammaCumulative(x: number, shape: number): number {
  return Math.exp(gammaLogTails(x, shape).below);
}

/** The chance that a gamma variable of this shape and scale 1 is above x, exact far into the tail. */
export function gammaUpper(x: number, shape: number): number {
  return Math.exp(gammaLogTails(x, shape).above);
}

/**
 * The x below which a gamma variable of this shape and scale 1 falls with this chance, by Newton on log x and log
 * chance.
 */
export function gammaQuantile(chance: number, shape: number): number {
  if (chance > 0.5) return gammaUpperQuantile(1 - chance, shape);
  if (!(chance > 0)) return 0;
  const wanted = Math.log(chance);
  // The chance is at most xˢ / Γ(s + 1), and just that where x is next to nothing; the first term of DLMF 8.11.4.
  const least = (wanted + logGamma(shape + 1)) / shape;
  if (least < -600) return Math.exp(least);
  const root = increasingRoot((u) => {
    const x = Math.exp(u);
    const { below } = gammaLogTails(x, shape);
    return { value: below - wanted, slope: Math.exp(logPoissonMass(shape, x) - below) * shape };
  }, least);
  return Math.exp(root);
}

/** The x above which a gamma variable of this shape and scale 1 falls with this chance. */
export function gammaUpperQuantile(chance: number, shape: number): number {
  if (chance > 0.5) return gammaQuantile(1 - chance, shape);
  if (!(chance > 0)) throw new RangeError('a gamma variable has no upper end');
  const wanted = Math.log(chance);
  const root = increasingRoot(
    (u) => {
      const x = Math.exp(u);
      const { above } = gammaLogTails(x, shape);
      // Far out both logs are large and their difference is noise; the slope is never above x + 1, DLMF 8.10.
      return { value: wanted - above, slope: Math.min(x + 1, Math.exp(logPoissonMass(shape, x) - above) * shape) };
    },
    Math.log(shape + 1),
  );
  return Math.exp(root);
}
