import { sumOf } from '../summary.js';

/** Proportions drawn towards their mean. */
export interface JamesStein {
  readonly mean: number;
  /** Binomial variance at the mean. */
  readonly variance: number;
  readonly sumOfSquares: number;
  /** The part of each distance from the mean that is kept; 0 at least. */
  readonly kept: number;
  readonly shrunk: readonly number[];
}

/**
 * The James-Stein estimates of proportions x/n with one common n; null under four of them or where all are the same.
 * Efron B, Morris C (1977) Scientific American 236(5):119-127.
 */
export function jamesStein(x: readonly number[], n: number): JamesStein | null {
  if (x.length < 4) return null;
  const raw = x.map((cases) => cases / n);
  const mean = sumOf(raw) / raw.length;
  const variance = (mean * (1 - mean)) / n;
  const sumOfSquares = sumOf(raw.map((p) => (p - mean) ** 2));
  if (sumOfSquares === 0) return null;
  const kept = Math.max(0, 1 - ((raw.length - 3) * variance) / sumOfSquares);
  return { mean, variance, sumOfSquares, kept, shrunk: raw.map((p) => mean + kept * (p - mean)) };
}
