import { describe, expect, it } from 'vitest';
import { resampledRanks } from '../../src/statistic/resample/ranks.js';

const first = { items: [0], counts: [1] };
const second = { items: [1], counts: [1] };

describe('resampledRanks', () => {
  it('find the chance of the first place that the binomial gives', () => {
    // Five craft, three fouled on one part and two on another: the first part leads in P(X ≥ 3) of draws, X binomial
    // with n = 5 and p = 0.6: 0.68256 by R 4.2.2's pbinom(2, 5, .6, lower = FALSE). 40,000 draws err by 0.0023.
    const units = { stratumOf: [0, 0, 0, 0, 0], patternOf: [0, 0, 0, 1, 1], patterns: [first, second], items: 2 };
    const [one, other] = resampledRanks(units, 1, 40_000, 7);
    expect(Math.abs(one!.inTop - 0.68256)).toBeLessThan(0.008);
    expect(other!.inTop).toBeCloseTo(1 - one!.inTop, 12);
    expect([one!.rank, other!.rank]).toEqual([1, 2]);
    expect(one!.interval).toMatchObject({ low: 1, high: 2 });
  });

  it('draw every unit within its own stratum', () => {
    const units = { stratumOf: [0, 0, 1], patternOf: [0, 0, 1], patterns: [first, second], items: 2 };
    const found = resampledRanks(units, 1, 200, 1);
    expect(found.map(({ inTop, interval }) => [inTop, interval.low, interval.high])).toEqual([
      [1, 1, 1],
      [0, 2, 2],
    ]);
  });

  it('give equals the mean of their places, and a share of the last place', () => {
    const units = { stratumOf: [0, 1], patternOf: [0, 1], patterns: [first, second], items: 3 };
    const found = resampledRanks(units, 1, 10, 1);
    expect(found.map(({ rank, inTop }) => [rank, inTop])).toEqual([
      [1.5, 0.5],
      [1.5, 0.5],
      [3, 0],
    ]);
  });

  it('are the same for the same seed, and others for another', () => {
    const units = { stratumOf: [0, 0, 0, 0, 0], patternOf: [0, 0, 0, 1, 1], patterns: [first, second], items: 2 };
    expect(resampledRanks(units, 1, 300, 3)).toEqual(resampledRanks(units, 1, 300, 3));
    expect(resampledRanks(units, 1, 300, 3)).not.toEqual(resampledRanks(units, 1, 300, 4));
  });
});
