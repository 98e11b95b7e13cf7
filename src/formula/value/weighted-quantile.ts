/** Sorted numbers, each of a cluster; how often a cluster is drawn stands at `start` plus its number. */
export interface DrawnNumbers {
  readonly sorted: Float64Array;
  readonly clusterOf: Uint32Array;
  readonly weights: Uint8Array;
}

/**
 * The p-quantile of type 7 of sorted numbers, each standing for as many alike as its cluster was drawn, `total` in all; NaN
 * where all stand for none. The numbers before `from` are passed over: `passed` is how many they stand for, which must be no
 * more than lie below the quantile. Hyndman RJ, Fan Y (1996) The American Statistician 50:361-365.
 */
export function weightedQuantile(
  { sorted, clusterOf, weights }: DrawnNumbers,
  start: number,
  total: number,
  p: number,
  from = 0,
  passed = 0,
): number {
  if (total === 0) return Number.NaN;
  const place = p * (total - 1);
  const lower = Math.floor(place);
  const part = place - lower;
  let so = passed;
  let below = Number.NaN;
  for (let at = from; at < sorted.length; at += 1) {
    so += weights[start + clusterOf[at]!]!;
    if (so <= lower) continue;
    if (Number.isNaN(below)) {
      below = sorted[at]!;
      if (part === 0) return below;
    }
    if (so > lower + 1) return below + part * (sorted[at]! - below);
  }
  return below;
}
