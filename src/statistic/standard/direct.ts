import { gammaQuantile, gammaUpperQuantile } from '../distribution/gamma.js';
import type { Interval } from '../estimate.js';
import { tailBeyond, twoSided } from '../interval.js';
import { checkSameLength } from '../same-length.js';

/** A rate as it would be if the strata had the weights of a standard. */
export interface DirectRate {
  readonly crude: number;
  readonly adjusted: number;
  readonly standardErrorPoisson: number;
  /** As if each stratum's count were binomial; null where a count is above its exposure, as of events by the hour. */
  readonly standardErrorBinomial: number | null;
  /** Gamma limits; Fay & Feuer. */
  readonly interval: Interval;
  /** A less cautious upper limit; Tiwari, Clegg & Zou. */
  readonly upperTiwari: number;
}

/**
 * Directly standardised rate from counts and exposures by stratum, all exposures above 0, at a standard's weights; null
 * where those add up to 0. Throws where the three are not as long as each other. Fay MP, Feuer EJ (1997) Statistics in Medicine 16:791-801; Tiwari RC, Clegg LX, Zou Z (2006)
 * Stat Methods Med Res 15:547-569.
 */
export function directRate(
  counts: readonly number[],
  exposures: readonly number[],
  standard: readonly number[],
  confidence = 0.95,
): DirectRate | null {
  checkSameLength({ counts, exposures, standard });
  if (!exposures.every((exposure) => exposure > 0)) throw new RangeError('an exposure is not above 0');
  const sum = (term: (i: number) => number) => counts.reduce((total, _, i) => total + term(i), 0);
  const count = (i: number) => counts[i]!;
  const exposure = (i: number) => exposures[i]!;
  const whole = sum((i) => standard[i]!);
  if (!(whole > 0)) return null;
  const share = (i: number) => standard[i]! / whole;
  const weight = (i: number) => share(i) / exposure(i);
  const adjusted = sum((i) => weight(i) * count(i));
  const variance = sum((i) => weight(i) ** 2 * count(i));
  const binomial = sum((i) => {
    const rate = count(i) / exposure(i);
    return (share(i) ** 2 * rate * (1 - rate)) / exposure(i);
  });
  const tail = tailBeyond(confidence);
  const upper = (rate: number, spread: number) => (spread / rate) * gammaUpperQuantile(tail, (rate * rate) / spread);
  const largest = Math.max(...counts.map((_, i) => weight(i)));
  const low = adjusted === 0 ? 0 : (variance / adjusted) * gammaQuantile(tail, adjusted ** 2 / variance);
  const high = upper(adjusted + largest, variance + largest ** 2);
  const meanWeight = sum(weight) / counts.length;
  const meanSquare = sum((i) => weight(i) ** 2) / counts.length;
  return {
    crude: sum(count) / sum(exposure),
    adjusted,
    standardErrorPoisson: Math.sqrt(variance),
    standardErrorBinomial: counts.every((_, i) => count(i) <= exposure(i)) ? Math.sqrt(binomial) : null,
    interval: twoSided(low, high, confidence, 'gamma (Fay-Feuer)'),
    upperTiwari: upper(adjusted + meanWeight, variance + meanSquare),
  };
}
