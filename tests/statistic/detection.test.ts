import { describe, expect, test } from 'vitest';
import { captureRecapture } from '../../src/statistic/detection/capture-recapture.js';
import { agreement } from '../../src/statistic/detection/kappa.js';
import { dependentObservers, twoPassRemoval } from '../../src/statistic/detection/two-observers.js';

describe('agreement of two looks', () => {
  const table = [
    [22, 5, 2],
    [4, 9, 6],
    [1, 3, 13],
  ];

  test('weighted by distance is made of the kappas of all ways to cut the scale in two', () => {
    // Vanbelle S, Albert A (2009) Statistical Methodology 6:157-163: the mean of these, weighted by their room above chance.
    const cuts = [1, 2].map((cut) => {
      const cell = (i: number, j: number) =>
        table
          .slice(...(i === 0 ? [0, cut] : [cut]))
          .flatMap((row) => row.slice(...(j === 0 ? [0, cut] : [cut])))
          .reduce((sum, count) => sum + count, 0);
      return agreement([
        [cell(0, 0), cell(0, 1)],
        [cell(1, 0), cell(1, 1)],
      ]);
    });
    const sum = (term: (cut: (typeof cuts)[number]) => number) => cuts.reduce((total, cut) => total + term(cut), 0);
    const wanted = sum(({ observed, byChance }) => observed - byChance) / sum(({ byChance }) => 1 - byChance);
    expect(agreement(table).kappaWeighted).toBeCloseTo(wanted, 12);
  });

  test('on the finding and on its absence is asked of two categories alone', () => {
    expect(agreement(table)).toMatchObject({ positive: null, negative: null });
  });

  test('that used one category alone has no kappa of either kind, since chance agrees as well', () => {
    const alone = agreement([
      [5, 0],
      [0, 0],
    ]);
    const nothing = { kappa: null, standardError: null, interval: null, standardErrorNull: null, kappaWeighted: null };
    expect(alone).toEqual({ observed: 1, byChance: 1, ...nothing, kappaEvenUse: 1, positive: 1, negative: null });
  });

  test('is not asked of a table that is not square, has one category, or counts nothing', () => {
    const tables = [
      [[3]],
      [
        [0, 0],
        [0, 0],
      ],
      [
        [1, 2],
        [3, 4],
        [5, 6],
      ],
      [[1, 2], [3]],
    ];
    for (const wrong of tables) expect(() => agreement(wrong)).toThrow(RangeError);
  });
});

describe('two looks at the same craft', () => {
  test('of which the second found all that the first had leave nothing unseen', () => {
    // Chapman’s (6 × 9) / 6 − 1 is the 8 that were seen, with a variance of 0.
    const found = captureRecapture(5, 8, 5);
    expect(found).toMatchObject({ lincolnPetersen: 8, lincolnPetersenError: 0, chapman: 8, chapmanError: 0 });
    expect(found).toMatchObject({ normal: null, logNormal: null });
    expect(found).toMatchObject({ first: 5 / 8, second: 1, either: 1 });
  });

  test('without a match have Chapman’s number and nothing else', () => {
    const found = captureRecapture(2, 3, 0);
    expect(found).toMatchObject({ lincolnPetersen: null, lincolnPetersenError: null, chapman: 11 });
    expect(found).toMatchObject({ first: null, second: null, either: null });
  });

  test('cannot match more than either found, nor fewer than none', () => {
    for (const [n1, n2, m] of [
      [3, 5, 4],
      [5, 3, 4],
      [5, 3, -1],
    ] as const) {
      expect(() => captureRecapture(n1, n2, m)).toThrow(RangeError);
    }
  });

  test('that depend on each other say nothing where the counts leave no chance of detection', () => {
    const nothing = { first: null, second: null, either: null, total: null };
    expect(dependentObservers(2, 2, 2, 2)).toEqual(nothing);
    expect(dependentObservers(2, 3, 2, 3)).toEqual(nothing);
    expect(dependentObservers(0, 0, 0, 0)).toEqual(nothing);
    // The other’s finds weigh on the cross product: 6 × 2 is above 3 × 1, below 3 × 5.
    expect(dependentObservers(6, 3, 2, 1).total).not.toBeNull();
    expect(dependentObservers(6, 3, 2, 5)).toEqual(nothing);
  });
});

test('two passes of which the second took as much, or more, say nothing; one that took nothing had left nothing', () => {
  const nothing = { chance: null, total: null, standardError: null };
  expect([twoPassRemoval(5, 5), twoPassRemoval(3, 5), twoPassRemoval(5, -1)]).toEqual([nothing, nothing, nothing]);
  expect(twoPassRemoval(10, 0)).toEqual({ chance: 1, total: 10, standardError: 0 });
});
