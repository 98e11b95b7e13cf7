import { describe, expect, test } from 'vitest';
import { overDispersion } from '../../src/statistic/funnel/over-dispersion.js';
import { poissonExact } from '../../src/statistic/poisson.js';
import { erlangWait } from '../../src/statistic/queue/erlang.js';
import { generalWait } from '../../src/statistic/queue/general.js';
import { replayWaits } from '../../src/statistic/queue/replay.js';
import { directRate } from '../../src/statistic/standard/direct.js';
import { expectedEvents, standardisedRatio } from '../../src/statistic/standard/indirect.js';

describe('stations around a target', () => {
  // Spiegelhalter (2005), appendix A.3, with the moments of DerSimonian and Laird (1986), worked in R 4.2.2.
  test.each([
    [[1, 9], [20, 20], 2.73066666666667, 0.041825],
    [[1, 9, 4, 0, 7], [20, 24, 31, 9, 40], 2.10420844859154, 0.0128945596316352],
  ])('%j of %j spread as R says', (cases, trials, factor, variance) => {
    const found = overDispersion(cases, trials, 0.25)!;
    expect(found.factorWinsorised).toBeCloseTo(factor, 12);
    expect(found.betweenVariance).toBeCloseTo(variance, 12);
  });

  test('are no spread where there is one, and nothing where there is none', () => {
    expect(overDispersion([9], [20], 0.25)).toMatchObject({
      betweenVariance: 0,
      factor: expect.closeTo(4.26666667, 8),
    });
    expect(overDispersion([], [], 0.25)).toBeNull();
  });
});

describe('a rate at the weights of a standard', () => {
  test('of one stratum has the limits of its own count', () => {
    // With one weight the gamma limits of Fay and Feuer are those of Garwood.
    const found = directRate([7], [250], [3])!;
    const garwood = poissonExact(7, 250);
    expect(found.interval.low).toBeCloseTo(garwood.low!, 12);
    expect(found.interval.high).toBeCloseTo(garwood.high!, 12);
    expect(found.upperTiwari).toBeCloseTo(garwood.high!, 12);
    expect(found).toMatchObject({ crude: 0.028, adjusted: expect.closeTo(0.028, 14) });
  });

  test('without events starts at 0 and ends where the largest weight says', () => {
    // qgamma(.975, 1) is 3.68887945411394 in R 4.2.2; the weights are ½ by 10 and ½ by 20.
    const found = directRate([0, 0], [10, 20], [1, 1])!;
    expect(found.interval).toMatchObject({ low: 0, high: expect.closeTo(3.68887945411394 * 0.05, 12) });
    expect(found).toMatchObject({ adjusted: 0, standardErrorPoisson: 0, standardErrorBinomial: 0 });
  });

  test('of events by the hour, more of them than hours, has no binomial error', () => {
    expect(directRate([30], [10], [1])).toMatchObject({ adjusted: 3, standardErrorBinomial: null });
    // One stratum with the weights 1 and 1: the error of a share, √(p (1 − p) / n).
    expect(directRate([3], [10], [1])!.standardErrorBinomial).toBeCloseTo(Math.sqrt(0.021), 14);
  });

  test('is nothing where the standard weighs nothing, and is not asked where nobody was exposed', () => {
    expect(directRate([1, 2], [10, 20], [0, 0])).toBeNull();
    expect(directRate([], [], [])).toBeNull();
    expect(() => directRate([1, 2], [10, 0], [1, 1])).toThrow(RangeError);
    expect(() => directRate([1, 2], [-1, 10], [1, 1])).toThrow(RangeError);
  });
});

describe('events by those expected', () => {
  test('start at 0 where there are none', () => {
    // R 4.2.2, poisson.test(0, 2.5).
    const none = standardisedRatio(0, 2.5);
    expect(none).toMatchObject({ ratio: 0, standardError: 0, byar: { low: 0 }, exact: { low: 0 } });
    expect(none.exact.high).toBeCloseTo(1.47555178164557, 9);
    expect(none.p).toBeCloseTo(0.190906979709748, 12);
    expect(none.normal).toMatchObject({ low: 0, high: 0 });
  });

  test('are those of rates times exposures', () => {
    expect(expectedEvents([0.1, 0.02], [30, 200])).toBeCloseTo(7, 12);
  });

  test('must be expected, and be no fewer than none', () => {
    expect(() => standardisedRatio(3, 0)).toThrow(RangeError);
    expect(() => standardisedRatio(-1, 2)).toThrow(RangeError);
  });
});

describe('a waiting line', () => {
  test('that is as busy as it can be never settles', () => {
    expect(erlangWait(4, 2, 2)).toEqual({ utilisation: 1, steady: null });
    const line = { arrivalMean: 10, arrivalDeviation: 5, serviceMean: 20, serviceDeviation: 5, servers: 2 };
    expect(generalWait(line)).toEqual({ utilisation: 1, allenCunneen: null, sakasegawa: null });
  });

  test('of one server is that of the textbook', () => {
    // M/M/1 at a load of ½: empty half the time, ½ waiting, 1 there, and a wait beyond t has a chance of ½ e^(−t); Gross
    // and Harris (1998), section 2.2.
    const { steady } = erlangWait(1, 2, 1);
    expect(steady).toMatchObject({ chanceEmpty: expect.closeTo(0.5, 12), chanceOfWait: expect.closeTo(0.5, 12) });
    expect(steady).toMatchObject({ meanWaiting: expect.closeTo(0.5, 12), meanWait: expect.closeTo(0.5, 12) });
    expect(steady).toMatchObject({ meanPresent: expect.closeTo(1, 12), meanStay: expect.closeTo(1, 12) });
    expect(steady!.waitExceeds(3)).toBeCloseTo(0.5 * Math.exp(-3), 12);
  });

  test('is not asked of without arrivals, without service, or with parts of a server', () => {
    for (const [arrivals, services, servers] of [
      [0, 2, 1],
      [1, 0, 1],
      [1, 2, 0],
      [1, 2, 1.5],
      [1, 2, -1],
    ] as const) {
      expect(() => erlangWait(arrivals, services, servers)).toThrow(RangeError);
    }
    expect(() => replayWaits([1, 2], [1], 1)).toThrow(RangeError);
    for (const servers of [0, -1, 1.5]) expect(() => replayWaits([1], [1], servers)).toThrow(RangeError);
  });
});
