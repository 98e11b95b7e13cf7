import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { independentColumns } from '../../src/statistic/regression/independent-columns.js';
import { betaBinomialFit, shrunkProportion } from '../../src/statistic/shrinkage/beta-binomial.js';
import { chanceBelow, expectedRanks } from '../../src/statistic/shrinkage/expected-rank.js';
import { jamesStein } from '../../src/statistic/shrinkage/james-stein.js';
import { betaMoments } from '../../src/statistic/shrinkage/moments.js';

describe('a proportion that borrows from a prior', () => {
  test('is the beta of both together, with the quantiles of R', () => {
    // R 4.2.2, qbeta(c(.025, .975), 4, 9); mean 4/13, variance 4 × 9 / (13² × 14).
    const found = shrunkProportion(3, 10, { alpha: 1, beta: 2 });
    expect(found).toMatchObject({ alpha: 4, beta: 9, mean: 4 / 13 });
    expect(found.standardDeviation).toBeCloseTo(Math.sqrt(36 / (169 * 14)), 14);
    expect(found.interval.low).toBeCloseTo(0.0992460911495833, 10);
    expect(found.interval.high).toBeCloseTo(0.571858461878189, 10);
  });

  test('is not asked of more cases than trials', () => {
    expect(() => shrunkProportion(4, 3, { alpha: 1, beta: 1 })).toThrow(RangeError);
  });
});

describe('the likeliest prior of stations', () => {
  test.each([
    ['have no case', [0, 0, 0], [9, 12, 15]],
    ['have nothing but cases', [9, 12], [9, 12]],
    ['have no trials', [0, 0], [0, 0]],
    ['are none', [], []],
    ['agree as well as chance allows', [5, 10, 15], [50, 100, 150]],
  ])('is nothing where they %s', (_, cases, trials) => {
    expect(betaBinomialFit(cases, trials)).toBeNull();
  });

  test('is where no step along either parameter is likelier', () => {
    // The maximum by its definition, with the likelihood as Griffiths (1973) has it, from log gammas of whole numbers.
    const [cases, trials] = [
      [2, 9, 4, 0, 12],
      [20, 24, 31, 9, 17],
    ] as const;
    const found = betaBinomialFit(cases, trials)!;
    const rising = (from: number, count: number) =>
      Array.from({ length: count }, (_, at) => Math.log(from + at)).reduce((sum, log) => sum + log, 0);
    const likelihood = (alpha: number, beta: number) =>
      cases.reduce<number>((sum, x, at) => {
        const n = trials[at]!;
        const choose = rising(n - x + 1, x) - rising(1, x);
        return sum + choose + rising(alpha, x) + rising(beta, n - x) - rising(alpha + beta, n);
      }, 0);
    expect(found.logLikelihood).toBeCloseTo(likelihood(found.alpha, found.beta), 9);
    for (const [one, other] of [
      [1.0001, 1],
      [0.9999, 1],
      [1, 1.0001],
      [1, 0.9999],
    ] as const) {
      expect(likelihood(found.alpha * one, found.beta * other)).toBeLessThan(found.logLikelihood);
    }
    expect(found.mean).toBeCloseTo(found.alpha / (found.alpha + found.beta), 14);
    expect(found.correlation).toBeCloseTo(1 / (found.alpha + found.beta + 1), 14);
  });
});

describe('ranks of what is known as beta', () => {
  const shape = fc.double({ min: 0.5, max: 60, noNaN: true });

  test('the chance that one is below another is what integration by hand gives for powers', () => {
    // X with distribution function xᵃ and Y with xᵇ: P(X < Y) = b / (a + b).
    fc.assert(
      fc.property(shape, shape, (a, b) => {
        expect(chanceBelow({ alpha: a, beta: 1 }, { alpha: b, beta: 1 })).toBeCloseTo(b / (a + b), 9);
        expect(chanceBelow({ alpha: 1, beta: a }, { alpha: 1, beta: b })).toBeCloseTo(a / (a + b), 9);
      }),
      { numRuns: 30 },
    );
  });

  test('add up to the places there are, the highest first', () => {
    const found = expectedRanks([
      { alpha: 2, beta: 30 },
      { alpha: 9, beta: 20 },
      { alpha: 9, beta: 20 },
      { alpha: 30, beta: 3 },
    ]);
    expect(found.ranks.reduce((sum, rank) => sum + rank, 0)).toBeCloseTo(10, 9);
    expect(found.below[1]![2]).toBeCloseTo(0.5, 9);
    expect(found.ranks[1]).toBeCloseTo(found.ranks[2]!, 9);
    expect(found.below.map((row, i) => row[i])).toEqual([0, 0, 0, 0]);
    expect(found.below[0]![3]! + found.below[3]![0]!).toBeCloseTo(1, 12);
    expect(found.ranks[3]).toBeCloseTo(1, 4);
    expect(found.ranks[0]).toBeCloseTo(4, 1);
  });
});

describe('proportions drawn towards their mean', () => {
  test('are those of Efron and Morris where they spread, and the mean where chance spreads more', () => {
    // By hand: 0.1, 0.3, 0.5, 0.9 of 10; mean 0.45, variance 0.02475, squares 0.35; kept 1 − 0.02475 / 0.35.
    const found = jamesStein([1, 3, 5, 9], 10)!;
    expect(found).toMatchObject({ mean: expect.closeTo(0.45, 12), variance: expect.closeTo(0.02475, 12) });
    expect(found.kept).toBeCloseTo(1 - 0.02475 / 0.35, 12);
    expect(found.shrunk[3]).toBeCloseTo(0.45 + found.kept * 0.45, 12);
    const alike = jamesStein([4, 5, 5, 5, 5], 10)!;
    expect(alike.kept).toBe(0);
    for (const value of alike.shrunk) expect(value).toBeCloseTo(0.48, 12);
  });

  test('are nothing under four, or where all are the same', () => {
    expect(jamesStein([1, 3, 5], 10)).toBeNull();
    expect(jamesStein([3, 3, 3, 3], 10)).toBeNull();
  });
});

test('a prior from moments has their mean and spread, and is none where they do not spread or spread too much', () => {
  // Gelman et al. (2013), section 5.1: 0.1, 0.3, 0.5 have mean 0.3 and deviation 0.2, so that α + β = 0.21 / 0.04 − 1.
  const found = betaMoments([1, 6, 5], [10, 20, 10])!;
  expect(found.alpha).toBeCloseTo(0.3 * 4.25, 12);
  expect(found.beta).toBeCloseTo(0.7 * 4.25, 12);
  expect(betaMoments([1, 2], [10, 20])).toBeNull();
  expect(betaMoments([0, 10], [10, 10])).toBeNull();
  expect(betaMoments([3], [10])).toBeNull();
  expect(betaMoments([], [])).toBeNull();
});

test('a column is independent where those before it do not settle it', () => {
  const pattern = (values: readonly number[], trials = 1) => ({
    columns: values.map((_, at) => at),
    values,
    cases: 0,
    trials,
  });
  // The third is the sum of the first two, the fifth 3 less twice the fourth.
  const rows = [
    [1, 0, 1, 2, -1],
    [1, 1, 2, 0, 3],
    [1, 0, 1, 5, -7],
    [1, 1, 2, 7, -11],
    [1, 3, 4, 1, 1],
  ];
  const first = rows.map((row) => pattern(row, 3));
  expect(independentColumns(first, 5)).toEqual([true, true, false, true, false]);
  expect(independentColumns([pattern([1, 0]), pattern([1, 0])], 2)).toEqual([true, false]);
  expect(independentColumns([pattern([1, 1], 0), pattern([1, 2])], 2)).toEqual([true, false]);
});

test('columns are found to depend on each other as elimination finds it', () => {
  // By Gauss, the largest pivot first: whole numbers this small leave rounding far below 1e-9.
  const rankOf = (rows: readonly (readonly number[])[]): number => {
    const left = rows.map((row) => [...row]);
    let rank = 0;
    for (let column = 0; column < (left[0]?.length ?? 0); column += 1) {
      const at = left.map((row, i) => (i < rank ? 0 : Math.abs(row[column]!)));
      const pivot = at.indexOf(Math.max(...at));
      if (pivot < 0 || at[pivot]! < 1e-9) continue;
      [left[rank], left[pivot]] = [left[pivot]!, left[rank]!];
      const lead = left[rank]!;
      for (const row of left.slice(rank + 1)) {
        const factor = row[column]! / lead[column]!;
        lead.forEach((value, i) => {
          row[i]! -= factor * value;
        });
      }
      rank += 1;
    }
    return rank;
  };
  const row = fc.array(fc.integer({ min: -2, max: 2 }), { minLength: 4, maxLength: 4 });
  fc.assert(
    fc.property(fc.array(row, { minLength: 1, maxLength: 6 }), (rows) => {
      const patterns = rows.map((values) => ({ columns: [0, 1, 2, 3], values, cases: 0, trials: 2 }));
      const upTo = (columns: number) => rankOf(rows.map((values) => values.slice(0, columns)));
      expect(independentColumns(patterns, 4)).toEqual([1, 2, 3, 4].map((columns) => upTo(columns) > upTo(columns - 1)));
    }),
    { numRuns: 200 },
  );
});
