import { normalUpperQuantile } from './distribution/normal.js';
import type { Interval } from './estimate.js';

/** The chance left beyond each of two limits: 0.025 for a confidence of 0.95. Throws unless it lies between 0 and 1. */
export function tailBeyond(confidence: number): number {
  if (!(confidence > 0 && confidence < 1)) throw new RangeError(`a confidence lies between 0 and 1, not ${confidence}`);
  return (1 - confidence) / 2;
}

/** The standard normal z of two limits: 1.96 for a confidence of 0.95. */
export function normalZ(confidence: number): number {
  return normalUpperQuantile(tailBeyond(confidence));
}

/** The number itself, or null where it is not finite. */
export function finiteOrNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}

/** Two-sided limits; an end that is not finite becomes null. */
export function twoSided(low: number, high: number, confidence: number, method: string): Interval {
  return { low: finiteOrNull(low), high: finiteOrNull(high), confidence, sides: 'two', method };
}
