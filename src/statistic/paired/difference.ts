import type { Interval } from '../estimate.js';
import { normalZ, twoSided } from '../interval.js';
import { wilson } from '../proportion/wilson.js';
import { signChange } from '../root.js';

/** The difference of two shares of the same pairs under three kinds of limits. */
export interface PairedDifference {
  readonly value: number;
  readonly standardError: number;
  readonly wald: Interval;
  readonly newcombe: Interval;
  readonly tango: Interval;
}

/**
 * The share of first less that of second in n pairs: a both, b first only, c second only, d neither. At least one pair.
 * Newcombe RG (1998) Statistics in Medicine 17:2635-2650, method 10; Tango T (1998) Statistics in Medicine 17:891-908.
 */
export function pairedDifference(a: number, b: number, c: number, d: number, confidence = 0.95): PairedDifference {
  const n = a + b + c + d;
  if (!(n > 0 && Math.min(a, b, c, d) >= 0)) throw new RangeError(`pairs ${a}, ${b}, ${c}, ${d}`);
  const z = normalZ(confidence);
  const value = (b - c) / n;
  const standardError = Math.sqrt(Math.max(0, b + c - (b - c) ** 2 / n)) / n;
  const wald = twoSided(value - z * standardError, value + z * standardError, confidence, 'Wald, pairs');
  return { value, standardError, wald, newcombe: newcombe(a, b, c, d, confidence), tango: tango(b, c, n, confidence) };
}

function newcombe(a: number, b: number, c: number, d: number, confidence: number): Interval {
  const n = a + b + c + d;
  const [p1, p2] = [(a + b) / n, (a + c) / n];
  const first = wilson(a + b, n, confidence);
  const second = wilson(a + c, n, confidence);
  const phi = correlation(a, b, c, d);
  const apart = (left: number, right: number) => Math.sqrt(left * left - 2 * phi * left * right + right * right);
  const low = p1 - p2 - apart(p1 - (first.low ?? 0), (second.high ?? 1) - p2);
  const high = p1 - p2 + apart(p2 - (second.low ?? 0), (first.high ?? 1) - p1);
  return twoSided(low, high, confidence, 'Newcombe square-and-add, pairs');
}

/** Newcombe's phi, drawn towards 0 by half the pairs where positive; 0 where a margin is empty. */
function correlation(a: number, b: number, c: number, d: number): number {
  const margins = (a + b) * (c + d) * (a + c) * (b + d);
  if (margins === 0) return 0;
  const cross = a * d - b * c;
  return (cross > 0 ? Math.max(0, cross - (a + b + c + d) / 2) : cross) / Math.sqrt(margins);
}

function tango(b: number, c: number, n: number, confidence: number): Interval {
  const z = normalZ(confidence);
  const score = (difference: number) => {
    const linear = -b - c + (2 * n - b + c) * difference;
    const constant = -c * difference * (1 - difference);
    const q = (Math.sqrt(Math.max(0, linear * linear - 8 * n * constant)) - linear) / (4 * n);
    const variance = n * (2 * q + difference * (1 - difference));
    const gap = b - c - n * difference;
    return variance > 0 ? gap / Math.sqrt(variance) : Math.sign(gap) * 1e300;
  };
  const value = (b - c) / n;
  const low = value === -1 ? -1 : signChange((at) => score(at) - z, -1, value);
  const high = value === 1 ? 1 : signChange((at) => score(at) + z, value, 1);
  return twoSided(low, high, confidence, 'Tango score, pairs');
}
