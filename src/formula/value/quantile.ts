import type { BookTable } from '../../record/book.js';
import { quantile } from '../../statistic/quantile.js';
import type { Environment } from '../environment.js';
import type { Unit } from '../unit/unit.js';
import { clusteredTotals, type SelectedRows } from './census.js';
import type { NumberValue } from './evaluated.js';
import { numberFrom } from './number.js';
import { drawTotals, sharedWeights, totalsByCluster } from './resamples.js';
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
          : drawQuantiles(
              table,
              numbers,
              Uint32Array.from(rows, clusterAt(table.clusterOf)),
              rows,
              p,
              counts.draws,
              environment,
            ),
      accounts: [account],
    },
    environment,
  );
}

function clusterAt(clusterOf: Uint32Array): (row: number) => number {
  return (row) => clusterOf[row]!;
}

/** Fewer numbers than this are gone through from the first. */
const manyNumbers = 200;

/** Within so many standard errors of independent numbers most quantiles of resamples lie; those that do not are found all the same. */
const errorsNear = 6;

function drawQuantiles(
  table: BookTable,
  numbers: Float64Array,
  clusters: Uint32Array,
  rows: Uint32Array,
  p: number,
  totals: () => Float64Array,
  environment: Environment,
): () => Float64Array {
  return () => {
    const order = Uint32Array.from(numbers, (_, at) => at).sort((a, b) => numbers[a]! - numbers[b]! || a - b);
    const drawn = {
      sorted: Float64Array.from(order, (at) => numbers[at]!),
      clusterOf: Uint32Array.from(order, (at) => clusters[at]!),
      weights: sharedWeights(environment),
    };
    // A resample's quantile lies near that of the rows themselves: numbers far below it need only be counted.
    const near = errorsNear * (1 + Math.sqrt(p * (1 - p) * numbers.length));
    const from = numbers.length < manyNumbers ? 0 : Math.max(0, Math.floor(p * numbers.length - near));
    const far = Uint32Array.from(order.subarray(0, from), (at) => rows[at]!);
    const passed = drawTotals(totalsByCluster(table, far, null, environment), environment);
    return totals().map((total, draw) => {
      const start = draw * environment.book.clusters.count;
      const isFar = passed[draw]! <= Math.floor(p * (total - 1));
      return weightedQuantile(drawn, start, total, p, isFar ? from : 0, isFar ? passed[draw]! : 0);
    });
  };
}
