import { HALF_LOG_TWO_PI, logGamma, stirlingSeries } from './log-gamma.js';

/**
 * What Stirling's formula leaves out of log n!, for any real n ≥ 0: log Γ(n + 1) − (n + ½) log n + n − ½ log 2π.
 * Loader C (2000) Fast and accurate computation of binomial probabilities, eq. 3.
 */
export function stirlingError(n: number): number {
  if (n < 15) return logGamma(n + 1) - (n + 0.5) * Math.log(n) + n - HALF_LOG_TWO_PI;
  return stirlingSeries(n);
}

/** The deviance x log(x / mean) + mean − x, at least 0, without cancellation near the mean; Loader 2000, section 4. */
export function devianceFrom(x: number, mean: number): number {
  if (x === 0) return mean;
  const gap = x - mean;
  if (Math.abs(gap) >= 0.1 * (x + mean)) return x * Math.log(x / mean) - gap;
  const v = gap / (x + mean);
  let total = gap * v;
  let term = 2 * x * v;
  for (let j = 1; j < 1000; j += 1) {
    term *= v * v;
    const next = total + term / (2 * j + 1);
    if (next === total) break;
    total = next;
  }
  return total;
}

/**
 * Log of Γ(s + f + 1) / (Γ(s + 1) Γ(f + 1)) pˢ qᶠ for real successes and failures ≥ 0. The chance p and its complement
 * q are both given, since one of them may be too close to 1 to hold the other; Loader 2000, eq. 5.
 */
export function logBinomialMass(successes: number, failures: number, p: number, q: number): number {
  if (successes === 0) return p < 0.5 ? failures * Math.log1p(-p) : failures * Math.log(q);
  if (failures === 0) return q < 0.5 ? successes * Math.log1p(-q) : successes * Math.log(p);
  const n = successes + failures;
  const corrections = stirlingError(n) - stirlingError(successes) - stirlingError(failures);
  const deviances = devianceFrom(successes, n * p) + devianceFrom(failures, n * q);
  return corrections - deviances - HALF_LOG_TWO_PI + 0.5 * Math.log(n / successes / failures);
}

/** Log of meanˣ exp(−mean) / Γ(x + 1) for real x ≥ 0 and mean > 0; Loader 2000, section 6. */
export function logPoissonMass(x: number, mean: number): number {
  if (x === 0) return -mean;
  return -stirlingError(x) - devianceFrom(x, mean) - HALF_LOG_TWO_PI - 0.5 * Math.log(x);
}
