import { describe, expect, it } from 'vitest';
import { randomFrom, randomFromState } from '../../src/statistic/random.js';

describe('randomFrom', () => {
  it('is xoshiro128**', () => {
    // Made with the authors' xoshiro128starstar.c 1.1 from the state 1, 2, 3, 4, as asserted in the rand_xoshiro
    // library.
    const made = [11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804];
    const random = randomFromState([1, 2, 3, 4]);
    expect(made.map(random.uint32)).toEqual(made);
  });

  it('the same seed gives the same numbers, another seed others', () => {
    const first = (seed: number) => Array.from({ length: 5 }, randomFrom(seed).uint32);
    expect(first(7)).toEqual(first(7));
    expect(first(7)).not.toEqual(first(8));
  });

  it('uniform joins 27 bits of one number and 26 of the next', () => {
    // genrand_res53 of Matsumoto and Nishimura’s mt19937ar.c, over the numbers above.
    const { uniform } = randomFromState([1, 2, 3, 4]);
    expect([uniform(), uniform()]).toEqual([
      ((11520 >>> 5) * 2 ** 26) / 2 ** 53,
      ((5927040 >>> 5) * 2 ** 26 + (70819200 >>> 6)) / 2 ** 53,
    ]);
  });

  it('uniform fills [0, 1) evenly', () => {
    const { uniform } = randomFrom(1);
    const bins = new Array<number>(10).fill(0);
    for (let i = 0; i < 100_000; i += 1) bins[Math.floor(uniform() * 10)]! += 1;
    // Each of ten bins is binomial with standard deviation 95; six of them allow one seed in a hundred million.
    expect(Math.min(...bins)).toBeGreaterThan(10_000 - 6 * 95);
    expect(Math.max(...bins)).toBeLessThan(10_000 + 6 * 95);
  });

  it('below stays below', () => {
    const { below } = randomFrom(3);
    const seen = new Set(Array.from({ length: 1000 }, () => below(6)));
    expect([...seen].sort()).toEqual([0, 1, 2, 3, 4, 5]);
  });
});

describe('fill', () => {
  it('a filled list holds what single calls give, and leaves the source where they would', () => {
    const [one, other] = [randomFrom(5), randomFrom(5)];
    const list = new Uint32Array(9);
    one.fill(list);
    expect([...list]).toEqual(Array.from({ length: 9 }, () => other.uint32()));
    expect(one.uint32()).toBe(other.uint32());
  });
});
