import { checkSameLength } from '../same-length.js';
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
  checkSameLength({ clusters: cluster, totals: total });
  const named = Uint32Array.from(cluster);
  const amounts = Float64Array.from(total);
  const sums = new Float64Array(resamples);
  // Four resamples side by side: an addition need not wait for the one before it, and each sum keeps its order.
  let resample = 0;
  for (; resample + 4 <= resamples; resample += 4) {
    const first = resample * clusters;
    const [second, third, fourth] = [first + clusters, first + 2 * clusters, first + 3 * clusters];
    let [one, two, three, four] = [0, 0, 0, 0];
    for (let i = 0; i < named.length; i += 1) {
      const at = named[i]!;
      const amount = amounts[i]!;
      one += weights[first + at]! * amount;
      two += weights[second + at]! * amount;
      three += weights[third + at]! * amount;
      four += weights[fourth + at]! * amount;
    }
    sums[resample] = one;
    sums[resample + 1] = two;
    sums[resample + 2] = three;
    sums[resample + 3] = four;
  }
  for (; resample < resamples; resample += 1) {
    const start = resample * clusters;
    let sum = 0;
    for (let i = 0; i < named.length; i += 1) sum += weights[start + named[i]!]! * amounts[i]!;
    sums[resample] = sum;
  }
  return sums;
}
