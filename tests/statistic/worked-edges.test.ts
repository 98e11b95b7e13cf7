import { describe, expect, test } from 'vitest';
import { clusteredProportion, effectiveCounts, logitLimits } from '../../src/statistic/proportion/clustered.js';
import { proportionEstimate } from '../../src/statistic/proportion/estimate.js';
import { exactTest } from '../../src/statistic/proportion/exact-test.js';
import { type QuantileType, quantile } from '../../src/statistic/quantile.js';
import { clusterWeights, lonelyStrata } from '../../src/statistic/resample/cluster-weights.js';
import { resampledRanks } from '../../src/statistic/resample/ranks.js';
import { summary, sumOf } from '../../src/statistic/summary.js';
import { survivalAt } from '../../src/statistic/survival/at.js';
import { incidenceAt } from '../../src/statistic/survival/incidence-at.js';
import { kaplanMeier } from '../../src/statistic/survival/kaplan-meier.js';
import { survivalQuantile, weightedSurvivalQuantile } from '../../src/statistic/survival/quantile.js';
import { restrictedMean } from '../../src/statistic/survival/restricted-mean.js';

const near = (found: readonly (number | null | undefined)[], wanted: readonly number[]): void => {
  expect(found).toHaveLength(wanted.length);
  for (const [at, value] of wanted.entries()) expect(found[at]).toBeCloseTo(value, 9);
};

describe('the exact test', () => {
  // R 4.2.2, binom.test(x, n, p)$p.value.
  test.each([
    [7, 20, 0.25, 0.30547848486367],
    [1, 20, 0.25, 0.0381770418089218],
    [15, 20, 0.6, 0.253120218870254],
    [0, 5, 0.7, 0.00243],
    [2, 10, 0.5, 0.109375],
    [30, 100, 0.2, 0.0169453596767852],
    [12, 1000, 0.02, 0.070486388165045],
    [3, 12, 0.25, 1],
    [0, 10, 0, 1],
    [1, 10, 0, 0],
    [10, 10, 1, 1],
    [9, 10, 1, 0],
  ])('of %d in %d against %d is R’s', (x, n, proportion, p) => near([exactTest(x, n, proportion)], [p]));
});

describe('a proportion from clusters', () => {
  test('in strata, one of them of a single cluster, has the spread of Cochran’s formula', () => {
    // Worked in R 4.2.2 from Cochran (1977), eq. 11.13, stratum by stratum, the single cluster about the overall ratio; the
    // limits by qbeta at 17.516 (qt(.975, 35) / qt(.975, 3))² trials, on the log-odds scale by plogis.
    const found = clusteredProportion({
      cases: [1, 3, 0, 4, 0, 1],
      trials: [6, 8, 5, 9, 6, 4],
      strata: [1, 1, 1, 2, 2, 3],
    });
    near(
      [found.standardError, found.designEffect, found.effectiveTrials],
      [0.101581255115285, 2.16938898971567, 17.5164528722811],
    );
    near([found.interval!.low, found.interval!.high], [0.0221925005349029, 0.66475394869572]);
    const log = logitLimits(found)!;
    near([log.low, log.high], [0.049330575027278, 0.649872727797734]);
    expect(found).toMatchObject({ clusters: 6, cases: 9, trials: 38, degreesOfFreedom: 3 });
    // Mean squares of anova(lm(y ~ cluster)) in R; Ridout et al. (1999).
    near([found.intraclassCorrelation], [0.0514115189962532]);
  });

  test('of two clusters has a spread, of one has none, and an empty one is none', () => {
    const two = clusteredProportion({ cases: [1, 6, 0], trials: [8, 9, 0] });
    // As above: sqrt(2 (e1² + e2²)) / n, mean squares by anova.
    near(
      [two.standardError, two.effectiveTrials, two.intraclassCorrelation],
      [0.269896193771626, 3.32511505588429, 0.392961876832845],
    );
    expect([two.clusters, two.degreesOfFreedom]).toEqual([2, 1]);
    const nothing = {
      degreesOfFreedom: null,
      standardError: null,
      designEffect: null,
      effectiveTrials: null,
      interval: null,
    };
    expect(clusteredProportion({ cases: [1], trials: [3] })).toMatchObject({
      ...nothing,
      proportion: 1 / 3,
      clusters: 1,
    });
    expect(clusteredProportion({ cases: [0], trials: [0] })).toMatchObject({
      ...nothing,
      proportion: null,
      clusters: 0,
    });
  });

  test('that all agree has no effective size, and no limits on the log-odds scale', () => {
    for (const cases of [
      [0, 0],
      [3, 4],
    ]) {
      const found = clusteredProportion({ cases, trials: [3, 4] });
      expect([found.effectiveTrials, effectiveCounts(found), logitLimits(found)]).toEqual([null, null, null]);
    }
    // One trial a cluster: nothing lies within clusters.
    expect(clusteredProportion({ cases: [1, 0, 1], trials: [1, 1, 1] }).intraclassCorrelation).toBeNull();
    expect(effectiveCounts(clusteredProportion({ cases: [1], trials: [3] }))).toBeNull();
    expect(logitLimits(clusteredProportion({ cases: [1], trials: [3] }))).toBeNull();
  });
});

describe('the estimate of a proportion', () => {
  test('of nothing has no value, and says so', () => {
    const nothing = {
      value: null,
      numerator: 0,
      denominator: 0,
      interval: null,
      why: 'nothing was counted',
      cautions: [],
    };
    expect(proportionEstimate({ cases: 0, trials: 0 })).toEqual(nothing);
  });

  test('without a case, or with nothing else, has the one limit that 1 − 0.05^(1/n) gives, and no caution', () => {
    const none = proportionEstimate({ cases: 0, trials: 20 });
    const every = proportionEstimate({ cases: 20, trials: 20 });
    near([none.interval!.high, every.interval!.low], [1 - 0.05 ** (1 / 20), 0.05 ** (1 / 20)]);
    expect([none.interval!.sides, every.interval!.sides, none.cautions, every.cautions]).toEqual([
      'upper',
      'lower',
      [],
      [],
    ]);
    expect(proportionEstimate({ cases: 5, trials: 20 }).cautions).toEqual([]);
  });

  test('from few clusters, from one, and from clusters that agree carries its caution', () => {
    const cautions = (cases: readonly number[], trials: readonly number[]) => {
      const sum = (list: readonly number[]) => list.reduce((total, one) => total + one, 0);
      const estimate = proportionEstimate({ cases: sum(cases), trials: sum(trials), clusters: { cases, trials } });
      return [estimate.interval!.sides, ...estimate.cautions];
    };
    const twenty = (value: number) => Array.from({ length: 20 }, () => value);
    expect(cautions([1, 0], [3, 3])).toEqual(['two', 'under 20 clusters']);
    expect(cautions(twenty(1), twenty(3))).toEqual(['two']);
    expect(cautions([1], [3])).toEqual(['two', 'one cluster only: the limits take trials as independent']);
    expect(cautions([0, 0], [3, 3])).toEqual(['upper', 'under 20 clusters', 'the limit takes trials as independent']);
    expect(cautions([3, 3], [3, 3])).toEqual(['lower', 'under 20 clusters', 'the limit takes trials as independent']);
    expect(cautions(twenty(0), twenty(3))).toEqual(['upper', 'the limit takes trials as independent']);
  });
});

describe('times that ended or were still open', () => {
  // R 4.2.2, survival 3.5-3, survfit(Surv(time, ended) ~ 1, conf.type = "log-log").
  const times = [2, 3, 5, 7, 8, 11, 12, 14];
  const ended = [1, 0, 1, 1, 0, 1, 0, 1];
  const curve = kaplanMeier(times, ended);

  test('have the limits of R at a time, and none before the first ending or when all have ended', () => {
    const [five, nine] = [survivalAt(curve, 5), survivalAt(curve, 9)];
    near(
      [five.value, five.standardError, five.interval!.low, five.interval!.high],
      [0.729166666666667, 0.164976236363953, 0.276390220336123, 0.925353181257205],
    );
    near(
      [nine.value, nine.standardError, nine.interval!.low, nine.interval!.high],
      [0.583333333333333, 0.185560961331769, 0.180188891012823, 0.844068691657458],
    );
    expect(survivalAt(curve, 1)).toEqual({ value: 1, standardError: null, interval: null });
    expect(survivalAt(curve, 14)).toEqual({ value: 0, standardError: null, interval: null });
    expect(survivalAt(kaplanMeier([], []), 1)).toEqual({ value: null, standardError: null, interval: null });
  });

  test('have the restricted mean of R with normal limits, cut at nothing and at the horizon', () => {
    // summary(fit, rmean = 10)$table; limits by qnorm(.975).
    const { value, standardError, interval } = restrictedMean(curve, 10);
    near(
      [value, standardError, interval!.low, interval!.high],
      [7.83333333333333, 1.05065565948831, 5.77408608058307, 9.8925805860836],
    );
    // Two times, 1 and 3, to a horizon of 3: 2 with an error of sqrt(1/2), whose limits are 0.614 and 3.386, cut to 3.
    near(Object.values(restrictedMean(kaplanMeier([1, 3], [1, 1]), 3).interval!).slice(0, 2) as number[], [
      2 - 1.959963984540054 * Math.SQRT1_2,
      3,
    ]);
  });

  test('left for one of several causes as in R', () => {
    // survfit(Surv(time, factor(cause, 0:2)) ~ 1, id = 1:8): pstate and std.err at 7 and 14.
    const causes = [1, 0, 2, 1, 1, 0, 2, 1];
    const at7 = [1, 2].map((cause) => incidenceAt(times, causes, cause, 7));
    near(
      at7.map(({ value }) => value),
      [0.270833333333333, 0.145833333333333],
    );
    near(
      at7.map(({ standardError }) => standardError),
      [0.164976236363953, 0.134545810902761],
    );
    const at14 = [1, 2].map((cause) => incidenceAt(times, causes, cause, 14));
    near(
      at14.map(({ value }) => value),
      [0.635416666666667, 0.364583333333333],
    );
    near(
      at14.map(({ standardError }) => standardError),
      [0.203380804027222, 0.203380804027222],
    );
  });

  test('that nobody, or everybody, left for a cause has no limits; without anybody there is no share', () => {
    expect(incidenceAt([1, 2], [0, 0], 1, 1)).toEqual({ value: 0, standardError: 0, interval: null });
    expect(incidenceAt([1, 2], [1, 1], 1, 2)).toMatchObject({ value: 1, interval: null });
    expect(incidenceAt([], [], 1, 2)).toEqual({ value: null, standardError: null, interval: null });
    const causes = [1, 0, 2, 1, 1, 0, 2, 1];
    expect(incidenceAt(times, causes, 1, 7).interval!.method).toBe('cumulative incidence, log-log');
    const clustered = incidenceAt(times, causes, 1, 7, [0, 0, 1, 1, 2, 2, 3, 3]).interval!;
    expect(clustered.method).toBe('cumulative incidence, log-log, clustered');
  });

  test('rest on a level exactly in one pass as in two', () => {
    // R: quantile(survfit(Surv(c(1,2,3,4), c(1,1,1,1)) ~ 1)) gives 1.5, 2.5, 3.5; with c(1,1,0,0) 1.5 and 3.
    const weights = [1, 1, 1, 1];
    const asked = (of: readonly number[]) =>
      [0.25, 0.5, 0.75].map((p) => weightedSurvivalQuantile([1, 2, 3, 4], of, weights, p));
    expect(asked([1, 1, 1, 1])).toEqual([1.5, 2.5, 3.5]);
    expect(asked([1, 1, 0, 0])).toEqual([1.5, 3, null]);
    // The last one not drawn: the rest ends where somebody was last followed, at 3.
    expect(weightedSurvivalQuantile([1, 2, 3, 4], [1, 0, 0, 0], [1, 0, 1, 0], 0.5)).toBe(2);
    expect(weightedSurvivalQuantile([1, 2], [1, 1], [0, 0], 0.5)).toBeNull();
    expect(survivalQuantile(kaplanMeier([], []), 0.5).value).toBeNull();
  });
});

describe('quantiles, sums and summaries', () => {
  test('are those of R in all nine types', () => {
    // R 4.2.2, quantile(c(1, 2, 4, 8, 16), c(0, .1, .25, .5, .9, 1), type = 1:9).
    const wanted: readonly (readonly number[])[] = [
      [1, 1, 2, 4, 16, 16],
      [1, 1, 2, 4, 16, 16],
      [1, 1, 1, 2, 8, 16],
      [1, 1, 1.25, 3, 12, 16],
      [1, 1, 1.75, 4, 16, 16],
      [1, 1, 1.5, 4, 16, 16],
      [1, 1.4, 2, 4, 12.8, 16],
      [1, 1, 1.66666666666667, 4, 16, 16],
      [1, 1, 1.6875, 4, 16, 16],
    ];
    for (const [at, values] of wanted.entries()) {
      const type = (at + 1) as QuantileType;
      near(
        [0, 0.1, 0.25, 0.5, 0.9, 1].map((p) => quantile([1, 2, 4, 8, 16], p, type)),
        values,
      );
    }
    expect(quantile([], 0.5)).toBeNull();
  });

  test('lose nothing beside a number that dwarfs the others', () => {
    // By hand: the large ones cancel. Neumaier (1974) gives the second as the case that plain compensation loses.
    expect([sumOf([1e100, 1, -1e100]), sumOf([1, 1e100, 1, -1e100]), sumOf([1, 1e100, -1e100])]).toEqual([1, 2, 1]);
  });

  test('of a list are those of R, with null where there is nothing to say', () => {
    // R 4.2.2: mean, sd, acf(lag.max = 1).
    const { mean, standardDeviation, autocorrelation } = summary([3, 1, 4, 1, 5, 9, 2, 6]);
    near([mean, standardDeviation, autocorrelation], [3.875, 2.74837614393871, -0.175236406619385]);
    near([summary([4, 7]).mean, summary([4, 7]).standardDeviation], [5.5, 2.12132034355964]);
    // Far from 0 as near it: the same numbers moved by 10⁹ spread as much.
    near([summary([1e9 + 4, 1e9 + 7, 1e9 + 13]).standardDeviation], [4.58257569495584]);
    expect(summary([])).toEqual({ n: 0, mean: null, standardDeviation: null, autocorrelation: null });
    expect(summary([4])).toEqual({ n: 1, mean: 4, standardDeviation: null, autocorrelation: null });
  });
});

describe('resamples', () => {
  test('draw as many clusters of each stratum as it has, in every one', () => {
    const stratumOf = [5, 2, 5, 5, 9, 2];
    const weights = clusterWeights(stratumOf, 50, 3);
    expect(weights).toHaveLength(300);
    for (let start = 0; start < weights.length; start += 6) {
      const drawn = new Map<number, number>();
      for (const [at, stratum] of stratumOf.entries()) {
        drawn.set(stratum, (drawn.get(stratum) ?? 0) + weights[start + at]!);
      }
      expect([...drawn]).toEqual([
        [5, 3],
        [2, 2],
        [9, 1],
      ]);
    }
    expect(new Set(weights).size).toBeGreaterThan(2);
    expect(lonelyStrata([9, 2, 2, 5, 1])).toEqual([1, 5, 9]);
  });

  test('rank by what each unit adds, not by how many units there are', () => {
    const patterns = [
      { items: [0], counts: [1] },
      { items: [1, 2], counts: [5, 2] },
    ];
    const found = resampledRanks({ stratumOf: [0, 0, 1], patternOf: [0, 0, 1], patterns, items: 3 }, 1, 20, 1);
    // By hand: totals 2, 5 and 2 in every draw, so that two share the second and third place.
    expect(found.map(({ rank, inTop }) => [rank, inTop])).toEqual([
      [2.5, 0],
      [1, 1],
      [2.5, 0],
    ]);
    expect(resampledRanks({ stratumOf: [0], patternOf: [0], patterns, items: 3 }, 1, 0, 1)[0]!.inTop).toBe(0);
  });
});
