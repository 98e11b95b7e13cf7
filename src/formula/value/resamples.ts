import type { BookTable, Clusters } from '../../record/book.js';
import { writtenNumber } from '../../record/written-numbers.js';
import { clusterWeights } from '../../statistic/resample/cluster-weights.js';
import { type ClusterTotals, weightedTotals } from '../../statistic/resample/weighted-totals.js';
import type { Environment } from '../environment.js';

/** The draws made for station-days: books that are restricted to some rows share those of the whole one. */
const drawnFor = new WeakMap<Clusters, Map<string, Uint8Array>>();

/** How often each station-day is drawn in each resample (resamples × station-days), made once for a book and kept. */
export function sharedWeights({ book, resamples, cache }: Environment): Uint8Array {
  const { clusters } = book;
  const key = `${resamples.count} ${resamples.seed}`;
  const drawn = drawnFor.get(clusters) ?? new Map<string, Uint8Array>();
  drawnFor.set(clusters, drawn);
  const weights =
    cache.weights.get(key) ?? drawn.get(key) ?? clusterWeights(clusters.stratumOf, resamples.count, resamples.seed);
  drawn.set(key, weights);
  cache.weights.set(key, weights);
  return weights;
}

/** A whole number in groups of three digits, whatever the machine's language. */
export function inThousands(whole: number): string {
  return writtenNumber(String(whole));
}

/** The resamples in words, with all that is needed to draw them again. */
export function describeResamples({ book, resamples }: Environment): string {
  const days = inThousands(book.clusters.count);
  return `${inThousands(resamples.count)} resamples of ${days} station-days within station and season (seed ${resamples.seed})`;
}

/** How many of some rows, or what total of a field over them, each station-day has; only station-days with such rows. */
export function totalsByCluster(
  table: BookTable,
  rows: Uint32Array,
  amounts: Float64Array | null,
  { book }: Environment,
): ClusterTotals & { readonly cluster: Uint32Array } {
  const clusterOf = table.clusterOf!;
  const sums = new Float64Array(book.clusters.count);
  const seen = new Uint8Array(book.clusters.count);
  for (let position = 0; position < rows.length; position++) {
    const cluster = clusterOf[rows[position]!]!;
    sums[cluster]! += amounts === null ? 1 : amounts[position]!;
    seen[cluster] = 1;
  }
  const cluster = new Uint32Array(seen.length);
  const total = new Float64Array(seen.length);
  let found = 0;
  for (let index = 0; index < seen.length; index++) {
    if (seen[index] === 0) continue;
    cluster[found] = index;
    total[found++] = sums[index]!;
  }
  return { cluster: cluster.slice(0, found), total: total.slice(0, found) };
}

/** The sum of totals in every shared resample. */
export function drawTotals(totals: ClusterTotals, environment: Environment): Float64Array {
  const { resamples, book } = environment;
  return weightedTotals(sharedWeights(environment), totals, resamples.count, book.clusters.count);
}
