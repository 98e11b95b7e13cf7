import { describe, expect, test } from 'vitest';
import { cochranArmitage } from '../../src/statistic/trend/cochran-armitage.js';
import { logisticTrend } from '../../src/statistic/trend/logistic.js';
import { poissonTrend } from '../../src/statistic/trend/poisson.js';

// R 4.2.2 where nothing else is said: prop.trend.test, chisq.test without correction, lm with weights, glm.
const cases = [1, 5, 9];
const trials = [10, 12, 14];
const scores = [1, 2, 4];

describe('a linear trend in proportions', () => {
  test('has the statistics of R, and leaves what the line does not explain', () => {
    const found = cochranArmitage(cases, trials, scores);
    expect(found.slope).toBeCloseTo(1 / 6, 12);
    expect(found.chiSquared).toBeCloseTo(6.51428571428571, 12);
    expect(found.p).toBeCloseTo(0.0107011295373058, 12);
    expect(found.departure).toBeCloseTo(0.558367346938779, 12);
    expect(found.pDeparture).toBeCloseTo(0.454918812213628, 12);
    // Mantel (1963) takes n − 1 for n: 35 for 36.
    expect(found.zMantel).toBeCloseTo(Math.sqrt((6.51428571428571 * 35) / 36), 12);
  });

  test('passes over a group without trials, in its degrees of freedom too', () => {
    expect(cochranArmitage([1, 0, 5, 9], [10, 0, 12, 14], [1, 7, 2, 4])).toEqual(
      cochranArmitage(cases, trials, scores),
    );
  });

  test('of two groups leaves nothing to depart from', () => {
    expect(cochranArmitage([1, 5], [10, 12], [1, 2])).toMatchObject({ departureDegreesOfFreedom: 0, pDeparture: null });
  });

  test.each([
    ['without a case', [0, 0, 0], trials, scores],
    ['with nothing but cases', trials, trials, scores],
    ['where all scores are the same', cases, trials, [2, 2, 2]],
    ['without trials', [0, 0, 0], [0, 0, 0], scores],
  ])('%s is nothing throughout', (_, x, n, at) => {
    const nothing = { slope: null, z: null, chiSquared: null, p: null, zMantel: null, pMantel: null };
    const found = cochranArmitage(x, n, at);
    expect(found).toEqual({
      ...{ ...nothing, departure: null, pDeparture: null },
      departureDegreesOfFreedom: n[0] === 0 ? 0 : 1,
    });
  });

  test('is not asked of more cases than trials', () => {
    for (const trend of [cochranArmitage, logisticTrend]) {
      expect(() => trend([1, 13], [10, 12], [1, 2])).toThrow(RangeError);
      expect(() => trend([1, 2], [10], [1, 2])).toThrow(RangeError);
    }
  });
});

describe('a line in log odds', () => {
  test('has the coefficients, error and deviances of R', () => {
    const found = logisticTrend(cases, trials, scores)!;
    expect(found.intercept).toBeCloseTo(-2.25723482586425, 9);
    expect(found.slope).toBeCloseTo(0.743104610840979, 9);
    expect(found.slopeStandardError).toBeCloseTo(0.305024389065921, 6);
    expect(found.pWald).toBeCloseTo(0.0148419112609319, 7);
    expect(found.likelihoodRatio).toBeCloseTo(6.76153155248351, 9);
    expect(found.residualDeviance).toBeCloseTo(1.08890203444648, 9);
  });

  test('is the same with a group that has no trials', () => {
    const found = logisticTrend([1, 0, 5, 9], [10, 0, 12, 14], [1, 7, 2, 4])!;
    expect(found.slope).toBeCloseTo(0.743104610840979, 9);
    expect(found.residualDeviance).toBeCloseTo(1.08890203444648, 9);
  });

  test('through two groups passes through both, so that it leaves no deviance', () => {
    const found = logisticTrend([3, 6], [10, 12], [0, 1])!;
    expect(found.slope).toBeCloseTo(Math.log((6 * 7) / (6 * 3)), 9);
    expect(found.residualDeviance).toBeCloseTo(0, 9);
  });

  test.each([
    ['without a case', [0, 0, 0], trials, scores],
    ['with nothing but cases', trials, trials, scores],
    ['where all scores are the same', cases, trials, [2, 2, 2]],
    ['where scores separate cases from others', [0, 5, 14], [10, 12, 14], scores],
    ['without trials', [0, 0, 0], [0, 0, 0], scores],
  ])('%s is nothing', (_, x, n, at) => {
    expect(logisticTrend(x, n, at)).toBeNull();
  });
});

describe('a line in log rates', () => {
  test('has the coefficients, error and dispersion of R, with a group that had no event', () => {
    const found = poissonTrend([0, 4, 9], [50, 80, 90], [0, 1, 3])!;
    expect(found.intercept).toBeCloseTo(-3.99899431757662, 7);
    expect(found.slope).toBeCloseTo(0.58202759196161, 7);
    expect(found.slopeStandardError).toBeCloseTo(0.268927539182625, 7);
    expect(found.pWald).toBeCloseTo(0.0304448354414706, 7);
    expect(found.dispersion).toBeCloseTo(1.65922604244099, 6);
  });

  test('through two groups has no dispersion', () => {
    const found = poissonTrend([3, 5], [100, 120], [0, 1])!;
    expect(found.slope).toBeCloseTo(Math.log((5 * 100) / (3 * 120)), 9);
    expect(found.slopeStandardError).toBeCloseTo(0.730296708482266, 9);
    expect(found.dispersion).toBeNull();
  });

  test('is nothing without events or where all scores are the same, and is not asked without exposure', () => {
    expect(poissonTrend([0, 0, 0], [50, 80, 90], [0, 1, 3])).toBeNull();
    expect(poissonTrend([0, 4, 9], [50, 80, 90], [2, 2, 2])).toBeNull();
    expect(poissonTrend([], [], [])).toBeNull();
    expect(() => poissonTrend([0, 4], [50, 0], [0, 1])).toThrow(RangeError);
    expect(() => poissonTrend([0, 4], [-1, 50], [0, 1])).toThrow(RangeError);
  });
});
