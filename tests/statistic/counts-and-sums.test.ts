import { describe, expect, test } from 'vitest';
import { concentration, groupsHolding } from '../../src/statistic/concentration.js';
import { greedyCover } from '../../src/statistic/cover.js';
import { exactCover } from '../../src/statistic/exact-cover.js';
import { normalZ, tailBeyond, twoSided } from '../../src/statistic/interval.js';
import { solveSymmetric } from '../../src/statistic/linear.js';
import { benjaminiHochberg, bonferroni, hochberg, holm } from '../../src/statistic/many-comparisons.js';
import { spreadPrice, yearsToPay } from '../../src/statistic/money/spread-price.js';
import { poissonExact, poissonRate } from '../../src/statistic/poisson.js';
import { poissonTest } from '../../src/statistic/poisson-test.js';
import { randomFrom } from '../../src/statistic/random.js';
import { signChange } from '../../src/statistic/root.js';

describe('the exact test of a count of events', () => {
  // R 4.2.2, poisson.test(events, r = mean)$p.value.
  test.each([
    [5, 5, 1],
    [4, 4.5, 1],
    [0, 3, 0.0832956036767052],
    [12, 4, 9.15229147270063e-4],
    [3, 9.2, 0.0446071547283016],
    [1, 0.2, 0.181269246922018],
    [20, 20.5, 1],
    [150, 120, 8.02491090584117e-3],
    [1, 1e-3, 9.99500166625008e-4],
    [2, 30, 1.03091650421326e-10],
  ])('of %d where %d are expected is R’s', (events, mean, p) => {
    expect(Math.abs(poissonTest(events, mean) / p - 1)).toBeLessThan(1e-11);
  });

  test('is not asked of what is no count, or where nothing is expected', () => {
    for (const [events, mean] of [
      [-1, 2],
      [1.5, 2],
      [1, 0],
      [1, Number.NaN],
    ] as const) {
      expect(() => poissonTest(events, mean)).toThrow(RangeError);
    }
  });
});

test('a rate of no exposure has no value and says why; events over an exposure must be numbers', () => {
  expect(poissonRate(3, 0)).toMatchObject({ value: null, interval: null, why: 'no exposure was recorded' });
  expect(poissonRate(3, 2)).toMatchObject({ value: 1.5, numerator: 3, denominator: 2, why: null, cautions: [] });
  expect(poissonExact(0, 2).low).toBe(0);
  for (const [events, exposure] of [
    [-1, 2],
    [1, 0],
    [1, -1],
    [Number.POSITIVE_INFINITY, 2],
    [1, Number.POSITIVE_INFINITY],
  ] as const) {
    expect(() => poissonExact(events, exposure)).toThrow(RangeError);
  }
});

test('p-values of many comparisons, ties among them, are those of R, in the order given', () => {
  // R 4.2.2, p.adjust.
  const p = [0.04, 0.01, 0.03, 0.01, 0.6];
  const near = (found: readonly number[], wanted: readonly number[]) => {
    expect(found.map((value) => Number(value.toFixed(12)))).toEqual(wanted);
  };
  near(bonferroni(p), [0.2, 0.05, 0.15, 0.05, 1]);
  near(holm(p), [0.09, 0.05, 0.09, 0.05, 0.6]);
  near(hochberg(p), [0.08, 0.04, 0.08, 0.04, 0.6]);
  near(benjaminiHochberg(p), [0.05, 0.025, 0.05, 0.025, 0.6]);
  expect([holm([]), hochberg([]), holm([0.9, 0.8]), hochberg([0.9, 0.8])]).toEqual([[], [], [1, 1], [0.9, 0.9]]);
});

describe('how a total is spread over groups', () => {
  test('has the coefficient and curve of the textbook', () => {
    // By hand, Dixon et al. (1987): 1, 2, 3, 10 of 16 give Σ (2i − n − 1) x = −3 − 2 + 3 + 30 = 28 of 4 × 16.
    const found = concentration([10, 1, 3, 2]);
    expect(found).toMatchObject({ gini: 28 / 64, giniUnbiased: expect.closeTo(28 / 48, 12) });
    expect(found.lorenz).toEqual([0, 1 / 16, 3 / 16, 6 / 16, 1]);
    expect(concentration([4, 4, 4]).gini).toBe(0);
    expect(concentration([1, 3])).toMatchObject({ gini: 0.25, giniUnbiased: 0.5 });
    expect(concentration([7])).toEqual({ gini: 0, giniUnbiased: null, lorenz: [0, 1] });
  });

  test('is nothing where the total is 0, and is not asked of amounts below 0', () => {
    for (const amounts of [[], [0, 0]]) {
      expect(concentration(amounts)).toEqual({ gini: null, giniUnbiased: null, lorenz: [] });
      expect(groupsHolding(amounts, 0.8)).toBeNull();
    }
    expect(() => concentration([1, -1])).toThrow(RangeError);
    expect(() => concentration([1, Number.NaN])).toThrow(RangeError);
  });

  test('is held by the fewest of the largest groups, rounding aside', () => {
    expect([0.5, 0.6, 0.62, 0.63, 1].map((share) => groupsHolding([1, 3, 10, 2], share))).toEqual([1, 1, 1, 2, 4]);
    // 0.1 + 0.2 is a little more than 0.3, and 0.3 + 0.3 + 0.3 a little less than 0.9.
    expect(groupsHolding([0.3, 0.3, 0.3, 0.1], 0.9)).toBe(3);
  });
});

describe('equations and roots', () => {
  test('a symmetric system is solved where it is positive definite, and not where it is singular or worse', () => {
    // By hand: 4x + 2y + z = 11, 2x + 5y + 3z = 21, x + 3y + 6z = 25 at 1, 2, 3.
    const matrix = [
      [4, 2, 1],
      [2, 5, 3],
      [1, 3, 6],
    ];
    solveSymmetric(matrix, [11, 21, 25])!.forEach((value, at) => {
      expect(value).toBeCloseTo(at + 1, 12);
    });
    const singular = [
      [1, 2],
      [2, 4],
    ];
    const indefinite = [
      [1, 2],
      [2, 1],
    ];
    expect([solveSymmetric(singular, [1, 2]), solveSymmetric(indefinite, [1, 2])]).toEqual([null, null]);
    expect([solveSymmetric([[0]], [1]), solveSymmetric([[Number.NaN]], [1]), solveSymmetric([], [])]).toEqual([
      null,
      null,
      [],
    ]);
  });

  test('a change of sign is found to the last digit, whichever way it goes', () => {
    expect(signChange((at) => at * at - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 15);
    expect(signChange((at) => 2 - at * at, 0, 2)).toBeCloseTo(Math.SQRT2, 15);
    // Where it does not change, the end nearer to a change.
    expect(signChange((at) => at + 1, 0, 2)).toBeCloseTo(0, 15);
    expect(signChange((at) => at - 5, 0, 2)).toBeCloseTo(0, 15);
  });
});

test('limits need a confidence between 0 and 1, and an end that is not finite is null', () => {
  expect(tailBeyond(0.9)).toBeCloseTo(0.05, 15);
  expect(normalZ(0.95)).toBeCloseTo(1.95996398454005, 13);
  for (const confidence of [0, 1, -0.1, 1.1, Number.NaN]) expect(() => tailBeyond(confidence)).toThrow(RangeError);
  const open = twoSided(Number.NEGATIVE_INFINITY, Number.NaN, 0.95, 'none');
  expect(open).toEqual({ low: null, high: null, confidence: 0.95, sides: 'two', method: 'none' });
});

test('chance starts from a whole number', () => {
  expect(() => randomFrom(1.5)).toThrow(RangeError);
  expect(randomFrom(-1).uint32()).toBe(randomFrom(4_294_967_295).uint32());
});

test('a price is spread and paid only where there is time, an amount and a rate above −1', () => {
  expect([spreadPrice(800, -1, 0.03), spreadPrice(800, 8, -1)]).toEqual([null, null]);
  // Money that loses: 800 over 2 years at −½ is a + 2a … by hand: a / 0.5 + a / 0.25 = 6a.
  expect(spreadPrice(600, 2, -0.5)).toBeCloseTo(100, 9);
  expect([yearsToPay(-1, 5, 0.03), yearsToPay(100, 5, -1), yearsToPay(100, -5, 0.03)]).toEqual([null, null, null]);
  expect(yearsToPay(0, 5, 0.03)).toBeCloseTo(0, 12);
  // As much each year as the discount: never.
  expect(yearsToPay(100, 50, 0.5)).toBeNull();
});

test('a cover of nothing picks nothing, and one that must reach more than can be covered is none', () => {
  expect(greedyCover([[1], [2]], 0)).toMatchObject({ picks: [], covered: [], bound: 0 });
  expect(greedyCover([], 2).boundAnyNumber).toBeCloseTo(1 - Math.exp(-1), 15);
  // 1 − (1 − ½)².
  expect(greedyCover([[1, 2], [2, 3], [9]], 2)).toMatchObject({ picks: [0, 1], covered: [2, 3], bound: 0.75 });
  const kinds = [
    { sets: [0], count: 5 },
    { sets: [0, 1], count: 2 },
    { sets: [2], count: 4 },
  ];
  expect(exactCover(kinds, 3, 1)).toEqual({ covered: 7, picks: [0] });
  expect(exactCover(kinds, 3, 2)).toEqual({ covered: 11, picks: [0, 2] });
  expect(exactCover(kinds, 3, 0)).toEqual({ covered: 0, picks: [] });
  expect([exactCover(kinds, 3, 2, 11), exactCover(kinds, 3, 2, 12)]).toEqual([{ covered: 11, picks: [0, 2] }, null]);
  // The largest is found first, but told in its place; of two alike the first.
  const later = [
    { sets: [2], count: 9 },
    { sets: [0], count: 5 },
    { sets: [1], count: 5 },
  ];
  expect(exactCover(later, 3, 2)).toEqual({ covered: 14, picks: [0, 2] });
});
