/** A total for some of the clusters; a cluster not named has a total of 0. */
export interface ClusterTotals {
  readonly cluster: ArrayLike<number>;
  readonly total: ArrayLike<number>;
}

/** The sum of totals in each resample, each cluster counted as often as it was drawn: `resamples` numbers. */
export function weightedTotals(
  weights: Uint8Array,
  { cluster, total }: ClusterTotals,
  resamples: number,
  clusters: number,
): Float64Array {
  if (weights.length !== resamples * clusters) {
    throw new RangeError(`${weights.length} weights for ${resamples} resamples of ${clusters} clusters`);
  }
  const named = Uint32Array.from(cluster);
  const amounts = Float64Array.from(total);
  const sums = new Float64Array(resamples);
  for (let resample = 0; resample < resamples; resample += 1) {
    const start = resample * clusters;
    let sum = 0;
    for (let i = 0; i < named.length; i += 1) sum += weights[start + named[i]!]! * amounts[i]!;
    sums[resample] = sum;
  }
  return sums;
}
