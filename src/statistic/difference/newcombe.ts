import type { Compared } from '../compared.js';
import { twoSided } from '../interval.js';
import { wilson } from '../proportion/wilson.js';

/**
 * The difference x1/n1 − x2/n2 with the square-and-add interval of two Wilson intervals; null without trials in a
 * group. Newcombe RG (1998) Statistics in Medicine 17:873-890, method 10.
 */
export function newcombeDifference(x1: number, n1: number, x2: number, n2: number, confidence = 0.95): Compared {
  const first = wilson(x1, n1, confidence);
  const second = wilson(x2, n2, confidence);
  if (first.low === null || first.high === null || second.low === null || second.high === null) {
    return { value: null, interval: null };
  }
  const p1 = x1 / n1;
  const p2 = x2 / n2;
  const low = p1 - p2 - Math.hypot(p1 - first.low, second.high - p2);
  const high = p1 - p2 + Math.hypot(first.high - p1, p2 - second.low);
  return { value: p1 - p2, interval: twoSided(low, high, confidence, 'Newcombe square-and-add of Wilson scores') };
}
