/** A seeded source of chance: the same seed gives the same numbers on every machine. */
export interface Random {
  /** A whole number from 0 to 2³² − 1. */
  readonly uint32: () => number;
  /** A number in [0, 1) with 53 random bits. */
  readonly uniform: () => number;
  /** A whole number from 0 to `count` − 1; uneven by at most count / 2³². */
  readonly below: (count: number) => number;
  /** Fills a list with what so many calls of `uint32` would give, several times faster. */
  readonly fill: (list: Uint32Array) => void;
}

/** Four well-mixed words from one seed; the finaliser of MurmurHash3 over a Weyl sequence, as in SplitMix32. */
function wordsFrom(seed: number): readonly [number, number, number, number] {
  let state = seed | 0;
  const word = () => {
    state = (state + 0x9e3779b9) | 0;
    let mixed = Math.imul(state ^ (state >>> 16), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    return mixed ^ (mixed >>> 16);
  };
  return [word(), word(), word(), word()];
}

/**
 * The generator xoshiro128** from its four words of state, not all 0. Blackman D, Vigna S (2021) ACM Trans Math
 * Software 47:36.
 */
export function randomFromState(state: readonly [number, number, number, number]): Random {
  let [a, b, c, d] = state;
  const uint32 = () => {
    const scrambled = Math.imul(b, 5);
    const result = Math.imul((scrambled << 7) | (scrambled >>> 25), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = (d << 11) | (d >>> 21);
    return result;
  };
  const uniform = () => ((uint32() >>> 5) * 67108864 + (uint32() >>> 6)) / 9007199254740992;
  const below = (count: number) => Math.floor((uint32() / 4294967296) * count);
  const fill = (list: Uint32Array) => {
    // The same step on copies of the state: variables that a function closes over are slow to write.
    let [one, two, three, four] = [a, b, c, d];
    for (let i = 0; i < list.length; i += 1) {
      const scrambled = Math.imul(two, 5);
      list[i] = Math.imul((scrambled << 7) | (scrambled >>> 25), 9);
      const shifted = two << 9;
      three ^= one;
      four ^= two;
      two ^= three;
      one ^= four;
      three ^= shifted;
      four = (four << 11) | (four >>> 21);
    }
    [a, b, c, d] = [one, two, three, four];
  };
  return { uint32, uniform, below, fill };
}

/** A source of chance from a whole number as seed, taken modulo 2³². */
export function randomFrom(seed: number): Random {
  if (!Number.isInteger(seed)) throw new RangeError(`a seed is a whole number, not ${seed}`);
  return randomFromState(wordsFrom(seed));
}
