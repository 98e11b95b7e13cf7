import type { Compared } from '../compared.js';
import { normalZ, twoSided } from '../interval.js';
import { checkCounts } from '../proportion/counts.js';
import { signChange } from '../root.js';

/** How the log-likelihood of x of n grows with the proportion p. */
function growth(x: number, n: number, p: number): number {
  return (x === 0 ? 0 : x / p) - (x === n ? 0 : (n - x) / (1 - p));
}

/** The second proportion that makes the counts likeliest when the first is larger by `difference`. */
function likeliestSecond(x1: number, n1: number, x2: number, n2: number, difference: number): number {
  const slope = (p2: number) => growth(x1, n1, p2 + difference) + growth(x2, n2, p2);
  // Just inside the ends, where a chance of 0 or 1 would divide by nothing.
  const low = Math.max(0, -difference) + 1e-15;
  const high = Math.min(1, 1 - difference) - 1e-15;
  if (slope(low) <= 0) return Math.max(0, -difference);
  if (slope(high) >= 0) return Math.min(1, 1 - difference);
  return signChange(slope, low, high);
}

/**
 * The difference x1/n1 − x2/n2 with score limits; null without trials in a group. Miettinen O, Nurminen M (1985)
 * Statistics in Medicine 4:213-226.
 */
export function miettinenNurminenDifference(
  x1: number,
  n1: number,
  x2: number,
  n2: number,
  confidence = 0.95,
): Compared {
  checkCounts(x1, n1);
  checkCounts(x2, n2);
  if (n1 === 0 || n2 === 0) return { value: null, interval: null };
  const z = normalZ(confidence);
  const value = x1 / n1 - x2 / n2;
  const all = n1 + n2;
  const score = (difference: number) => {
    const p2 = likeliestSecond(x1, n1, x2, n2, difference);
    const p1 = p2 + difference;
    const variance = ((p1 * (1 - p1)) / n1 + (p2 * (1 - p2)) / n2) * (all / (all - 1));
    if (value === difference) return 0;
    return variance > 0 ? (value - difference) / Math.sqrt(variance) : Math.sign(value - difference) * 1e300;
  };
  const low = value === -1 ? -1 : signChange((at) => score(at) - z, -1, value);
  const high = value === 1 ? 1 : signChange((at) => score(at) + z, value, 1);
  return { value, interval: twoSided(low, high, confidence, 'Miettinen-Nurminen score') };
}
