import { quantile } from '../../statistic/quantile.js';
import type { Environment } from '../environment.js';
import type { Unit } from '../unit/unit.js';
import { clusteredTotals, type SelectedRows } from './census.js';
import type { NumberValue } from './evaluated.js';
import { numberFrom } from './number.js';
import { sharedWeights } from './resamples.js';
import { weightedQuantile } from './weighted-quantile.js';

/** The p-quantile (type 7) of a field over rows that all have it, one number a row; resampled when an interval is due. */
export function quantileOf(
  { table, account }: SelectedRows,
  numbers: Float64Array,
  unit: Unit,
  p: number,
  environment: Environment,
): NumberValue {
  const { rows } = account;
  const value = quantile(numbers.slice().sort(), p);
  const counts = clusteredTotals(table, rows, null, environment);
  return numberFrom(
    {
      ...counts,
      value,
      unit,
      why: value === null ? 'no row has the field' : null,
      standing: 'estimate',
      draws:
        counts.draws === null || table.clusterOf === null
          ? null
          : drawQuantiles(numbers, Uint32Array.from(rows, clusterAt(table.clusterOf)), p, counts.draws, environment),
      accounts: [account],
    },
    environment,
  );
}

function clusterAt(clusterOf: Uint32Array): (row: number) => number {
  return (row) => clusterOf[row]!;
}

function drawQuantiles(
  numbers: Float64Array,
  clusters: Uint32Array,
  p: number,
  totals: () => Float64Array,
  environment: Environment,
): () => Float64Array {
  return () => {
    const order = Uint32Array.from(numbers, (_, at) => at).sort((a, b) => numbers[a]! - numbers[b]! || a - b);
    const sorted = Float64Array.from(order, (at) => numbers[at]!);
    const clusterAtPlace = Uint32Array.from(order, (at) => clusters[at]!);
    const weights = sharedWeights(environment);
    return totals().map((total, draw) => {
      const start = draw * environment.book.clusters.count;
      return weightedQuantile(sorted, (at) => weights[start + clusterAtPlace[at]!]!, total, p);
    });
  };
}
