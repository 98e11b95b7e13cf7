import type { BookTable } from '../../record/book.js';
import type { Environment } from '../environment.js';
import type { DrawnRows } from './account.js';
import { sharedWeights } from './resamples.js';

/**
 * How many of drawn rows, or what total of amounts over them, there are in every shared resample, each with its own threshold
 * and its own station-days; NaN where the threshold is not defined. Thresholds are gone through from the lowest on, so that
 * every row enters or leaves once.
 */
export function drawnTotals(
  { rows, values, operator, thresholds }: DrawnRows,
  table: BookTable,
  amounts: Float64Array | null,
  environment: Environment,
): Float64Array {
  const clusterOf = table.clusterOf!;
  const { count } = environment.book.clusters;
  const weights = sharedWeights(environment);
  const limits = thresholds();
  const leaves = operator === '>' || operator === '>=';
  // Rows equal to a threshold have left where more is asked for, and have entered where as much is enough.
  const isPassed = operator === '>' || operator === '<=' ? atMost : below;
  const order = Array.from(values.keys())
    .filter((at) => !Number.isNaN(values[at]!))
    .sort((one, other) => values[one]! - values[other]!);
  const held = new Float64Array(count);
  const add = (at: number, sign: number): void => {
    held[clusterOf[rows[at]!]!]! += sign * (amounts === null ? 1 : amounts[at]!);
  };
  if (leaves) for (const at of order) add(at, 1);
  const clusters = [...new Set(order.map((at) => clusterOf[rows[at]!]!))];
  const totals = new Float64Array(limits.length).fill(Number.NaN);
  const ascending = Array.from(limits.keys())
    .filter((draw) => !Number.isNaN(limits[draw]!))
    .sort((one, other) => limits[one]! - limits[other]!);
  let passed = 0;
  for (const draw of ascending) {
    const limit = limits[draw]!;
    for (; passed < order.length && isPassed(values[order[passed]!]!, limit); passed++) {
      add(order[passed]!, leaves ? -1 : 1);
    }
    const start = draw * count;
    let total = 0;
    for (const cluster of clusters) total += weights[start + cluster]! * held[cluster]!;
    totals[draw] = total;
  }
  return totals;
}

function atMost(value: number, limit: number): boolean {
  return value <= limit;
}

function below(value: number, limit: number): boolean {
  return value < limit;
}
