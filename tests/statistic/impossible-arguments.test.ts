import { describe, expect, test } from 'vitest';
import { clusteredProportion } from '../../src/statistic/proportion/clustered.js';
import { checkCounts } from '../../src/statistic/proportion/counts.js';
import { proportionEstimate } from '../../src/statistic/proportion/estimate.js';
import { exactTest } from '../../src/statistic/proportion/exact-test.js';
import { wilson } from '../../src/statistic/proportion/wilson.js';
import { everyLower, zeroUpper } from '../../src/statistic/proportion/zero-cases.js';
import { quantile } from '../../src/statistic/quantile.js';
import { kaplanMeier } from '../../src/statistic/survival/kaplan-meier.js';
import { survivalQuantile } from '../../src/statistic/survival/quantile.js';
import { restrictedMean } from '../../src/statistic/survival/restricted-mean.js';

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
  'as many endings as there are not times': [() => kaplanMeier([1, 2], [1])],
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
