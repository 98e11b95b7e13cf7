import type { Compared } from '../compared.js';
import { finiteOrNull, normalZ, twoSided } from '../interval.js';
import { checkCounts } from '../proportion/counts.js';
import { signChange } from '../root.js';

/**
 * The second proportion that makes the counts likeliest when the first is `ratio` times as large; a quadratic's root.
 */
function likeliestSecond(x1: number, n1: number, x2: number, n2: number, ratio: number): number {
  const a = (n1 + n2) * ratio;
  const b = (n1 + x2) * ratio + x1 + n2;
  const c = x1 + x2;
  // The smaller root by the form that does not subtract nearly equal numbers.
  return (2 * c) / (b + Math.sqrt(Math.max(0, b * b - 4 * a * c)));
}

/** How far from the middle limits are looked for, on the log scale: no limit lies further, and no square overflows. */
const WIDE = 300;

function scoreRatio(counts: readonly [number, number, number, number], confidence: number, factor: number): Compared {
  const [x1, n1, x2, n2] = counts;
  checkCounts(x1, n1);
  checkCounts(x2, n2);
  const method = factor === 1 ? 'Koopman score' : 'Miettinen-Nurminen score';
  if (n1 === 0 || n2 === 0 || x1 + x2 === 0) return { value: null, interval: null };
  const z = normalZ(confidence);
  const score = (log: number) => {
    const ratio = Math.exp(log);
    const p2 = likeliestSecond(x1, n1, x2, n2, ratio);
    const p1 = Math.min(1, p2 * ratio);
    const variance = ((p1 * (1 - p1)) / n1 + (ratio * ratio * p2 * (1 - p2)) / n2) * factor;
    const gap = x1 / n1 - (ratio * x2) / n2;
    return variance > 0 ? gap / Math.sqrt(variance) : Math.sign(gap) * 1e300;
  };
  const value = finiteOrNull(x1 / n1 / (x2 / n2));
  const middle = value === null || value === 0 ? 0 : Math.log(value);
  const low =
    x1 === 0
      ? 0
      : Math.exp(
          signChange((at) => score(at) - z, value === null ? -WIDE : middle - WIDE, value === null ? WIDE : middle),
        );
  const high =
    x2 === 0
      ? Number.POSITIVE_INFINITY
      : Math.exp(signChange((at) => score(at) + z, value === 0 ? -WIDE : middle, middle + WIDE));
  return { value, interval: twoSided(low, high, confidence, method) };
}

/**
 * The ratio of proportions (x1/n1) / (x2/n2) with score limits. No cases in the second group: no value and no upper
 * limit; none in either: nothing. Koopman PAR (1984) Biometrics 40:513-517.
 */
export function koopmanRatio(x1: number, n1: number, x2: number, n2: number, confidence = 0.95): Compared {
  return scoreRatio([x1, n1, x2, n2], confidence, 1);
}

/**
 * As `koopmanRatio` with the variance multiplied by N / (N − 1). Miettinen O, Nurminen M (1985) Statistics in Medicine
 * 4:213-226.
 */
export function miettinenNurminenRatio(x1: number, n1: number, x2: number, n2: number, confidence = 0.95): Compared {
  return scoreRatio([x1, n1, x2, n2], confidence, (n1 + n2) / (n1 + n2 - 1));
}
