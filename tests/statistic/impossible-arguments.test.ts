import { describe, expect, test } from 'vitest';
import { independence } from '../../src/statistic/contingency/independence.js';
import { raoScott } from '../../src/statistic/contingency/rao-scott.js';
import { overDispersion } from '../../src/statistic/funnel/over-dispersion.js';
import { clusteredProportion } from '../../src/statistic/proportion/clustered.js';
import { checkCounts } from '../../src/statistic/proportion/counts.js';
import { proportionEstimate } from '../../src/statistic/proportion/estimate.js';
import { exactTest } from '../../src/statistic/proportion/exact-test.js';
import { wilson } from '../../src/statistic/proportion/wilson.js';
import { everyLower, zeroUpper } from '../../src/statistic/proportion/zero-cases.js';
import { quantile } from '../../src/statistic/quantile.js';
import { resampledRanks } from '../../src/statistic/resample/ranks.js';
import { weightedTotals } from '../../src/statistic/resample/weighted-totals.js';
import { betaBinomialFit } from '../../src/statistic/shrinkage/beta-binomial.js';
import { betaMoments } from '../../src/statistic/shrinkage/moments.js';
import { directRate } from '../../src/statistic/standard/direct.js';
import { expectedEvents } from '../../src/statistic/standard/indirect.js';
import { cumulativeIncidence } from '../../src/statistic/survival/cumulative-incidence.js';
import { incidenceAt } from '../../src/statistic/survival/incidence-at.js';
import { kaplanMeier } from '../../src/statistic/survival/kaplan-meier.js';
import { logRank } from '../../src/statistic/survival/log-rank.js';
import { survivalQuantile, weightedSurvivalQuantile } from '../../src/statistic/survival/quantile.js';
import { restrictedMean } from '../../src/statistic/survival/restricted-mean.js';
import { cochranArmitage } from '../../src/statistic/trend/cochran-armitage.js';
import { logisticTrend } from '../../src/statistic/trend/logistic.js';
import { poissonTrend } from '../../src/statistic/trend/poisson.js';

const curve = kaplanMeier([1, 2], [1, 0]);

/** Each just beyond one edge of what can be asked, so that no edge is guarded by another one. */
const impossible: Readonly<Record<string, readonly (() => unknown)[]>> = {
  'counts below none, above all, or no numbers': [
    () => checkCounts(-1, 4),
    () => checkCounts(5, 4),
    () => checkCounts(Number.NaN, 4),
    () => checkCounts(0, Number.POSITIVE_INFINITY),
  ],
  'a cluster with fewer cases than none, or more than trials': [
    () => clusteredProportion({ cases: [-1, 2], trials: [3, 3] }),
    () => clusteredProportion({ cases: [4, 0], trials: [3, 3] }),
  ],
  'clusters that add up to other counts than were given': [
    () => proportionEstimate({ cases: 2, trials: 7, clusters: { cases: [1, 1], trials: [3, 3] } }),
    () => proportionEstimate({ cases: 3, trials: 6, clusters: { cases: [1, 1], trials: [3, 3] } }),
  ],
  'a stated proportion below 0 or above 1': [() => exactTest(1, 4, -0.1), () => exactTest(1, 4, 1.1)],
  'a limit without trials, or from endless ones': [
    () => zeroUpper(0),
    () => zeroUpper(-1),
    () => zeroUpper(Number.POSITIVE_INFINITY),
    () => everyLower(0),
    () => everyLower(-1),
    () => everyLower(Number.POSITIVE_INFINITY),
  ],
  'a confidence of none or of certainty': [() => wilson(1, 4, 0), () => wilson(1, 4, 1)],
  'a time below 0, without end, or no number': [
    () => kaplanMeier([-1], [1]),
    () => kaplanMeier([Number.POSITIVE_INFINITY], [1]),
    () => kaplanMeier([Number.NaN], [1]),
  ],
  'lists that belong together and are not as long as each other': [
    () => kaplanMeier([1, 2], [1]),
    () => kaplanMeier([1, 2], [1, 1], { weights: [1] }),
    () => weightedSurvivalQuantile([1, 2], [1, 1], [1], 0.5),
    () => logRank([1, 2], [1], [1, 2]),
    () => logRank([1, 2], [1, 1], [1]),
    () => cumulativeIncidence([1, 2], [1], [1]),
    () => incidenceAt([1, 2], [1], 1, 1),
    () => incidenceAt([1, 2], [1, 1], 1, 1, [1]),
    () => clusteredProportion({ cases: [1], trials: [3, 3] }),
    () => clusteredProportion({ cases: [1, 1], trials: [3, 3], strata: [0] }),
    () => raoScott([1, 1], [3, 3], [0]),
    () => independence([[1, 2], [3]]),
    () => cochranArmitage([1, 2], [5, 5], [1]),
    () => cochranArmitage([1], [5, 5], [1, 2]),
    () => logisticTrend([1, 2], [5, 5], [1]),
    () => poissonTrend([1, 2], [5, 5], [1]),
    () => poissonTrend([1, 2], [5], [1, 2]),
    () => directRate([1, 2], [5, 5], [1]),
    () => directRate([1, 2], [5], [1, 1]),
    () => expectedEvents([0.1, 0.2], [5]),
    () => overDispersion([1, 2], [5], 0.3),
    () => betaBinomialFit([1, 2], [5]),
    () => betaMoments([1, 2], [5]),
    () =>
      resampledRanks({ stratumOf: [0, 0], patternOf: [0], patterns: [{ items: [0], counts: [1] }], items: 1 }, 1, 9, 1),
    () => weightedTotals(new Uint8Array(6), { cluster: [0, 1], total: [5] }, 2, 3),
  ],
  'a target that leaves no room to spread, or a station without trials': [
    () => overDispersion([0, 0], [5, 5], 0),
    () => overDispersion([5, 5], [5, 5], 1),
    () => overDispersion([1, 0], [5, 0], 0.2),
  ],
  'a share ended of none or of all': [() => survivalQuantile(curve, 0), () => survivalQuantile(curve, 1)],
  'a horizon of nothing or without end': [
    () => restrictedMean(curve, 0),
    () => restrictedMean(curve, -1),
    () => restrictedMean(curve, Number.POSITIVE_INFINITY),
  ],
  'a quantile below 0 or above 1': [() => quantile([1, 2], -0.1), () => quantile([1, 2], 1.1)],
};

describe('a statistic throws for', () => {
  test.each(Object.entries(impossible))('%s', (_, asked) => {
    for (const ask of asked) expect(ask).toThrow(RangeError);
  });
});

test('the edges themselves can be asked', () => {
  expect(() => [checkCounts(0, 4), checkCounts(4, 4), checkCounts(0, 0)]).not.toThrow();
  expect([exactTest(0, 4, 0), exactTest(4, 4, 1)]).toEqual([1, 1]);
  expect([quantile([1, 2], 0), quantile([1, 2], 1)]).toEqual([1, 2]);
  expect(kaplanMeier([0], [1]).survival).toEqual([0]);
});
