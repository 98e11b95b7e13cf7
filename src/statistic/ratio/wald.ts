import type { Compared } from '../compared.js';
import { finiteOrNull, normalZ, twoSided } from '../interval.js';
import { checkCounts } from '../proportion/counts.js';

/** A ratio with the standard error of its logarithm. */
export interface LogRatio extends Compared {
  readonly logStandardError: number | null;
}

/** Limits symmetric on the log scale; no interval where the ratio or its error is not finite or is 0. */
export function logRatio(value: number, logStandardError: number, confidence: number, method: string): LogRatio {
  if (!(value > 0 && Number.isFinite(value) && Number.isFinite(logStandardError))) {
    return { value: finiteOrNull(value), logStandardError: null, interval: null };
  }
  const factor = Math.exp(normalZ(confidence) * logStandardError);
  return { value, logStandardError, interval: twoSided(value / factor, value * factor, confidence, method) };
}

/**
 * The ratio of proportions (x1/n1) / (x2/n2) with limits on the log scale; no interval where a group has no cases. Katz
 * D et al. (1978) Biometrics 34:469-474.
 */
export function katzRatio(x1: number, n1: number, x2: number, n2: number, confidence = 0.95): LogRatio {
  checkCounts(x1, n1);
  checkCounts(x2, n2);
  const error = Math.sqrt(1 / x1 - 1 / n1 + 1 / x2 - 1 / n2);
  return logRatio(x1 / n1 / (x2 / n2), error, confidence, 'Katz log');
}

/**
 * The odds ratio with limits on the log scale; no interval where a group has no cases or nothing else. Woolf B (1955)
 * Annals of Human Genetics 19:251-253.
 */
export function woolfOddsRatio(x1: number, n1: number, x2: number, n2: number, confidence = 0.95): LogRatio {
  checkCounts(x1, n1);
  checkCounts(x2, n2);
  const error = Math.sqrt(1 / x1 + 1 / (n1 - x1) + 1 / x2 + 1 / (n2 - x2));
  return logRatio((x1 * (n2 - x2)) / (x2 * (n1 - x1)), error, confidence, 'Woolf log');
}
