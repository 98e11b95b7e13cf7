import type { Compared } from '../compared.js';
import { logGamma } from '../distribution/log-gamma.js';
import { tailBeyond, twoSided } from '../interval.js';
import { signChange } from '../root.js';
import { tieOf } from '../tie.js';

/** Fisher's exact test of a two-by-two table, with the conditional odds ratio. */
export interface FisherTest extends Compared {
  readonly pTwoSided: number;
  /** Of an odds ratio above 1. */
  readonly pGreater: number;
}

/** What the first cell can be, given the margins, and the log chance of each up to a constant. */
function conditional(a: number, b: number, c: number, d: number) {
  const smallest = Math.max(0, a - d);
  const largest = Math.min(a + b, a + c);
  const cells = Array.from({ length: largest - smallest + 1 }, (_, i) => smallest + i);
  const logFactorial = (n: number) => logGamma(n + 1);
  const logs = cells.map((k) => {
    const moved = k - a;
    return -logFactorial(k) - logFactorial(b - moved) - logFactorial(c - moved) - logFactorial(d + moved);
  });
  return { smallest, largest, cells, logs };
}

/** The chance of every cell at an odds ratio given by its log. */
function chances(cells: readonly number[], logs: readonly number[], logOdds: number): readonly number[] {
  const tilted = logs.map((log, i) => log + logOdds * cells[i]!);
  const top = tilted.reduce((most, log) => Math.max(most, log), Number.NEGATIVE_INFINITY);
  const weights = tilted.map((log) => Math.exp(log - top));
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / all);
}

/**
 * The exact test of [[a, b], [c, d]] and the odds ratio by conditional likelihood with exact limits; the ratio or a
 * limit that is infinite is null. Fisher RA (1935) JRSS 98:39-82; limits: Cornfield J (1956), as in R's fisher.test.
 */
export function fisherExact(a: number, b: number, c: number, d: number, confidence = 0.95): FisherTest {
  if (![a, b, c, d].every((count) => Number.isInteger(count) && count >= 0)) {
    throw new RangeError(`counts ${a}, ${b}, ${c}, ${d}`);
  }
  const { smallest, largest, cells, logs } = conditional(a, b, c, d);
  const sumWhere = (logOdds: number, wanted: (cell: number, chance: number) => boolean) =>
    chances(cells, logs, logOdds).reduce((sum, chance, i) => (wanted(cells[i]!, chance) ? sum + chance : sum), 0);
  const asRare = tieOf(chances(cells, logs, 0)[a - smallest]!);
  const mean = (logOdds: number) => chances(cells, logs, logOdds).reduce((sum, p, i) => sum + p * cells[i]!, 0);
  const tail = tailBeyond(confidence);
  const solve = (evaluate: (logOdds: number) => number) => Math.exp(signChange(evaluate, -100, 100));
  const atLow = a === smallest;
  const atHigh = a === largest;
  const low = atLow ? 0 : solve((at) => sumWhere(at, (cell) => cell >= a) - tail);
  const high = atHigh ? Number.POSITIVE_INFINITY : solve((at) => tail - sumWhere(at, (cell) => cell <= a));
  const value = atHigh ? null : atLow ? 0 : solve((at) => mean(at) - a);
  return {
    value,
    interval: twoSided(low, high, confidence, 'exact conditional'),
    pTwoSided: Math.min(
      1,
      sumWhere(0, (_, chance) => chance <= asRare),
    ),
    pGreater: Math.min(
      1,
      sumWhere(0, (cell) => cell >= a),
    ),
  };
}
