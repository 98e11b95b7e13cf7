import type { Compared } from '../compared.js';
import { normalZ, twoSided } from '../interval.js';
import { checkCounts } from '../proportion/counts.js';

/**
 * The difference x1/n1 − x2/n2, its limits after adding one case and one other to each group, cut at −1 and 1; null
 * without trials in a group. Agresti A, Caffo B (2000) The American Statistician 54:280-288.
 */
export function agrestiCaffo(x1: number, n1: number, x2: number, n2: number, confidence = 0.95): Compared {
  checkCounts(x1, n1);
  checkCounts(x2, n2);
  if (n1 === 0 || n2 === 0) return { value: null, interval: null };
  const p1 = (x1 + 1) / (n1 + 2);
  const p2 = (x2 + 1) / (n2 + 2);
  const half = normalZ(confidence) * Math.sqrt((p1 * (1 - p1)) / (n1 + 2) + (p2 * (1 - p2)) / (n2 + 2));
  const low = Math.max(-1, p1 - p2 - half);
  const high = Math.min(1, p1 - p2 + half);
  return { value: x1 / n1 - x2 / n2, interval: twoSided(low, high, confidence, 'Agresti-Caffo') };
}
