import { describe, expect, test } from 'vitest';
import { breslowDay } from '../../src/statistic/contingency/breslow-day.js';
import { fisherExact } from '../../src/statistic/contingency/fisher.js';
import { independence } from '../../src/statistic/contingency/independence.js';
import { mantelHaenszel } from '../../src/statistic/contingency/mantel-haenszel.js';
import { raoScott } from '../../src/statistic/contingency/rao-scott.js';

const stratum = ([cases1, others1, cases2, others2]: readonly [number, number, number, number]) => {
  return { cases1, others1, cases2, others2 };
};

describe('Fisher’s test', () => {
  test('of a table whose first cell is the least it can be has limits from 0, exactly', () => {
    // The upper limit leaves a chance of 0.025 to 0 of 0 to 3: 35 / (35 + 105ψ + 70ψ² + 10ψ³); R 4.2.2, polyroot, and
    // fisher.test(matrix(c(0, 3, 5, 4), 2)), whose own search for it stops at five digits, for p.
    const found = fisherExact(0, 5, 3, 4);
    expect(found.value).toBe(0);
    expect(found.interval!.low).toBe(0);
    expect(found.interval!.high).toBeCloseTo(3.18194132021652, 9);
    expect(found.pTwoSided).toBeCloseTo(0.204545454545455, 12);
  });

  test('of a margin that leaves nothing open says nothing', () => {
    expect(fisherExact(0, 0, 3, 4)).toMatchObject({ value: null, interval: { low: 0, high: null }, pTwoSided: 1 });
  });

  test('stands for the counts of many seasons', () => {
    // R 4.2.2, fisher.test, two-sided; and to 12 digits by the ratios of neighbouring chances in Python's decimal.
    const found = fisherExact(70_000, 80_000, 70_300, 80_000);
    expect(found.pTwoSided).toBeCloseTo(0.560870764035, 6);
    expect(found.pGreater).toBeCloseTo(0.721827520509, 6);
  });

  test('is not asked of what are no counts', () => {
    for (const wrong of [-1, 1.5, Number.NaN]) {
      for (const at of [0, 1, 2, 3]) {
        const counts = [2, 3, 4, 5].map((count, place) => (place === at ? wrong : count));
        expect(() => fisherExact(...(counts as [number, number, number, number]))).toThrow(RangeError);
      }
    }
  });
});

describe('the test of independence', () => {
  test('of three by three has the statistic of R and the coefficient of Cramér, and no correction', () => {
    // R 4.2.2, chisq.test; V is sqrt(statistic / (n min(rows − 1, columns − 1))), Cramér (1946).
    const found = independence([
      [12, 3, 5],
      [7, 9, 4],
      [2, 6, 11],
    ]);
    expect(found.chiSquared).toBeCloseTo(14.4982518796992, 10);
    expect(found.p).toBeCloseTo(0.00586344073358058, 12);
    expect(found.cramersV).toBeCloseTo(0.350523239391318, 12);
    expect(found.smallestExpected).toBeCloseTo(5.79661016949153, 12);
  });

  test('is corrected in two by two alone', () => {
    const none = { chiSquaredYates: null, pYates: null };
    const wide = [
      [4, 2, 3],
      [1, 5, 2],
    ];
    expect(independence(wide)).toMatchObject(none);
    expect(independence([0, 1, 2].map((column) => wide.map((row) => row[column]!)))).toMatchObject(none);
  });

  test('is never corrected beyond what was expected', () => {
    // R 4.2.2, chisq.test(matrix(c(10, 11, 10, 10), 2)): 0, and 1.
    const found = independence([
      [10, 10],
      [11, 10],
    ]);
    expect(found.chiSquaredYates).toBeCloseTo(0, 12);
    expect(found.pYates).toBeCloseTo(1, 12);
  });
});

describe('two groups across strata', () => {
  test('that differ as much one way as the other have a common odds ratio of 1, and differ between strata', () => {
    // By hand: 4 are expected in every cell, so that the variance is 1 and each gap 2; R 4.2.2, pchisq(8, 1, lower = FALSE).
    const strata = [stratum([6, 2, 2, 6]), stratum([2, 6, 6, 2])];
    const { oddsRatio, homogeneity } = mantelHaenszel(strata);
    expect(oddsRatio.value).toBeCloseTo(1, 12);
    expect(homogeneity).toEqual(breslowDay(strata, 1));
    expect(homogeneity).toMatchObject({ degreesOfFreedom: 1, chiSquared: expect.closeTo(8, 10) });
    expect(homogeneity!.chiSquaredTarone).toBeCloseTo(8, 10);
    expect(homogeneity!.p).toBeCloseTo(0.00467773498104727, 12);
  });

  test('differ by what the equation of the expected count says, however small the ratio', () => {
    // A (n₂ − cases + A) = ψ (n₁ − A)(cases − A), Breslow & Day (1980), eq. 4.30, in 40 digits of Python's decimal: A is
    // 5 + 30ψ to the first order, and Σ (x₁ − A)² (1/A + 1/(n₁ − A) + 1/(cases − A) + 1/(n₂ − cases + A)) follows.
    const found = breslowDay([stratum([6, 14, 9, 1]), stratum([7, 13, 8, 2])], 1e-9);
    expect(found.chiSquared / 166666664).toBeCloseTo(1, 5);
  });

  test('are not corrected where that would move them past what was expected', () => {
    // R 4.2.2, mantelhaen.test: a gap of 0.033 is left as it is, one of just ½ is taken away.
    const small = mantelHaenszel([stratum([10, 11, 9, 10]), stratum([7, 8, 6, 8])]);
    expect(small.chiSquaredCorrected).toBeCloseTo(0.0205431694476978, 12);
    expect(small.pCorrected).toBeCloseTo(0.886030443931415, 12);
    const half = mantelHaenszel([stratum([1, 0, 0, 1]), stratum([1, 1, 1, 1])]);
    expect([half.chiSquaredCorrected, half.pCorrected]).toEqual([0, 1]);
    expect(half.chiSquared).toBeCloseTo(0.428571428571429, 12);
  });

  test('without a stratum that has both have nulls throughout', () => {
    const ratio = { value: null, logStandardError: null, interval: null };
    const difference = { value: null, standardError: null, interval: null };
    for (const strata of [[], [stratum([3, 4, 0, 0]), stratum([0, 0, 2, 5])]]) {
      expect(mantelHaenszel(strata)).toEqual({
        ...{ oddsRatio: ratio, riskRatio: ratio, woolf: ratio, difference, differenceSato: difference },
        ...{ chiSquared: null, p: null, chiSquaredCorrected: null, pCorrected: null, homogeneity: null },
      });
    }
  });
});

describe('groups whose trials came in clusters', () => {
  const cases = [1, 6, 2, 3, 7, 4];
  const trials = [8, 9, 7, 10, 9, 8];

  test('are told in ascending order, whatever order they came in', () => {
    const ascending = raoScott(cases, trials, [1, 1, 1, 2, 2, 2]);
    const descending = raoScott([...cases].reverse(), [...trials].reverse(), [2, 2, 2, 1, 1, 1]);
    const tens = raoScott(cases, trials, [9, 9, 9, 10, 10, 10]);
    expect(ascending.designEffects[0]).not.toBe(ascending.designEffects[1]);
    expect(descending.designEffects.map((effect) => effect!.toFixed(9))).toEqual(
      ascending.designEffects.map((effect) => effect!.toFixed(9)),
    );
    expect(tens).toEqual(ascending);
  });

  test.each([
    ['has one cluster', cases, [1, 1, 1, 1, 1, 2], null],
    ['agrees throughout', [2, 2, 2, 3, 7, 4], [1, 1, 1, 2, 2, 2], 0],
  ])('have no test where a group %s', (_, found, group, effect) => {
    const alike = effect === 0 ? [8, 8, 8, 10, 9, 8] : trials;
    const result = raoScott(found, alike, group);
    expect(result).toMatchObject({ chiSquared: null, p: null, degreesOfFreedom: 1 });
    expect(result.designEffects).toContain(effect);
    expect(result.chiSquaredUnadjusted).not.toBeNull();
  });
});
