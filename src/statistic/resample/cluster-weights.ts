import { randomFrom } from '../random.js';

/**
 * How often each cluster is drawn in each resample, row by row (resamples × clusters). The clusters of a stratum are
 * drawn with replacement as many times as there are; a stratum of one always has weight 1, so its spread is not seen:
 * see `lonelyStrata`. Rao JNK, Wu CFJ (1988) JASA 83:231-241 treat the slight shortfall of variance in small strata.
 */
export function clusterWeights(stratumOf: ArrayLike<number>, resamples: number, seed: number): Uint8Array {
  const clusters = stratumOf.length;
  const random = randomFrom(seed);
  const weights = new Uint8Array(resamples * clusters);
  const members = Array.from(membersByStratum(stratumOf).values(), (list) => Uint32Array.from(list));
  // What `random.below(size)` would draw, a whole resample at a time.
  const drawn = new Uint32Array(clusters);
  for (let start = 0; start < weights.length; start += clusters) {
    random.fill(drawn);
    let next = 0;
    for (const stratum of members) {
      const size = stratum.length;
      const share = size / 4294967296;
      for (let draw = 0; draw < size; draw += 1) weights[start + stratum[(drawn[next++]! * share) | 0]!]! += 1;
    }
  }
  return weights;
}

/** Strata of a single cluster, ascending: resampling says nothing about them. */
export function lonelyStrata(stratumOf: ArrayLike<number>): readonly number[] {
  return Array.from(membersByStratum(stratumOf))
    .filter(([, list]) => list.length === 1)
    .map(([stratum]) => stratum)
    .sort((a, b) => a - b);
}

function membersByStratum(stratumOf: ArrayLike<number>): Map<number, number[]> {
  const members = new Map<number, number[]>();
  for (let cluster = 0; cluster < stratumOf.length; cluster += 1) {
    const stratum = stratumOf[cluster]!;
    const list = members.get(stratum);
    if (list === undefined) members.set(stratum, [cluster]);
    else list.push(cluster);
  }
  return members;
}
