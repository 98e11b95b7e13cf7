/** A stream of random draws, wholly decided by its seed and name. */
export interface Random {
  /** A number in [0, 1). */
  readonly uniform: () => number;
  /** A whole number in [0, below). */
  readonly below: (below: number) => number;
  /** True with that probability. */
  readonly chance: (probability: number) => boolean;
  readonly pick: <T>(items: readonly T[]) => T;
  /** The index drawn with those weights. */
  readonly weighted: (weights: readonly number[]) => number;
  readonly normal: () => number;
  readonly exponential: (mean: number) => number;
  readonly logNormal: (median: number, spread: number) => number;
  /** A gamma draw of mean 1 with a whole shape. */
  readonly gammaOfMeanOne: (shape: number) => number;
  readonly poisson: (mean: number) => number;
}

/**
 * The stream of that name. Streams of different names are independent, so that one part of the basin can change without
 * moving the draws of another. The generator is sfc32 (Doty-Humphrey, PractRand), seeded by FNV-1a over the name.
 */
export function randomStream(seed: number, name: string): Random {
  let hash = 0x811c9dc5 ^ seed;
  const mix = (): number => {
    hash = Math.imul(hash ^ (hash >>> 15), 0x2c1b3c6d);
    hash = Math.imul(hash ^ (hash >>> 12), 0x297a2d39);
    hash ^= hash >>> 15;
    return hash | 0;
  };
  for (let at = 0; at < name.length; at++) hash = Math.imul(hash ^ name.charCodeAt(at), 0x01000193);
  let a = mix();
  let b = mix();
  let c = mix();
  let counter = 1;
  const next = (): number => {
    const sum = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + sum) | 0;
    return sum >>> 0;
  };
  for (let warm = 0; warm < 12; warm++) next();

  const uniform = (): number => next() / 4294967296;
  const below = (limit: number): number => Math.floor(uniform() * limit);
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  const exponential = (mean: number): number => -mean * Math.log(1 - uniform());
  return {
    uniform,
    below,
    chance: (probability) => uniform() < probability,
    pick: (items) => items[below(items.length)]!,
    weighted: (weights) => {
      let left = uniform() * weights.reduce((sum, weight) => sum + weight, 0);
      for (let index = 0; index < weights.length; index++) {
        left -= weights[index]!;
        if (left < 0) return index;
      }
      return weights.length - 1;
    },
    normal,
    exponential,
    logNormal: (median, spread) => median * Math.exp(spread * normal()),
    gammaOfMeanOne: (shape) => {
      let sum = 0;
      for (let draw = 0; draw < shape; draw++) sum += exponential(1 / shape);
      return sum;
    },
    poisson: (mean) => {
      let count = 0;
      for (let left = exponential(1); left < mean; left += exponential(1)) count++;
      return count;
    },
  };
}
