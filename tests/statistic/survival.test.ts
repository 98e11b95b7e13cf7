import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { survivalAt } from '../../src/statistic/survival/at.js';
import { cumulativeIncidence } from '../../src/statistic/survival/cumulative-incidence.js';
import { kaplanMeier } from '../../src/statistic/survival/kaplan-meier.js';
import { logRank } from '../../src/statistic/survival/log-rank.js';
import { survivalQuantile, weightedSurvivalQuantile } from '../../src/statistic/survival/quantile.js';
import { restrictedMean } from '../../src/statistic/survival/restricted-mean.js';

/** Whole times with ties, some still open, each standing for none to three alike. */
const followed = fc.array(
  fc.record({
    time: fc.integer({ min: 1, max: 12 }),
    ended: fc.constantFrom(0, 1),
    weight: fc.integer({ min: 0, max: 3 }),
  }),
  { minLength: 1, maxLength: 40 },
);

describe('kaplanMeier', () => {
  it('a time still open is censored, not dropped and not an ending', () => {
    // By hand: of 4, one ends at 2 (3/4 left); one is still open at 3; of the 2 left one ends at 5 (3/8 left).
    const curve = kaplanMeier([5, 2, 3, 9], [1, 1, 0, 0]);
    expect(curve).toMatchObject({ times: [2, 5], atRisk: [4, 2], events: [1, 1], censored: [1, 1], followedTo: 9 });
    expect(curve.survival).toEqual([0.75, 0.375]);
  });

  it('a weight of three is three times the same observation', () => {
    fc.assert(
      fc.property(followed, (observations) => {
        const weighted = kaplanMeier(
          observations.map(({ time }) => time),
          observations.map(({ ended }) => ended),
          { weights: observations.map(({ weight }) => weight) },
        );
        const repeated = observations.flatMap((one) => Array.from({ length: one.weight }, () => one));
        const plain = kaplanMeier(
          repeated.map(({ time }) => time),
          repeated.map(({ ended }) => ended),
        );
        expect(weighted).toEqual(plain);
      }),
    );
  });

  it('nothing followed gives an empty curve', () => {
    expect(kaplanMeier([], [])).toMatchObject({ times: [], subjects: 0, followedTo: null });
  });

  it('once all have ended the spread is not known, and null says so', () => {
    const curve = kaplanMeier([1, 2], [1, 1]);
    expect(curve.survival.at(-1)).toBe(0);
    expect([curve.standardError.at(-1), curve.low.at(-1), curve.high.at(-1)]).toEqual([null, null, null]);
  });
});

describe('survivalQuantile', () => {
  it('a curve that rests on the level exactly gives the middle of the rest', () => {
    // R 4.2.2, survival 3.5-3: quantile(survfit(Surv(c(1,2,3,4), c(1,1,1,1)) ~ 1)) gives 1.5, 2.5, 3.5.
    const curve = kaplanMeier([1, 2, 3, 4], [1, 1, 1, 1]);
    expect([0.25, 0.5, 0.75, 0.9].map((p) => survivalQuantile(curve, p).value)).toEqual([1.5, 2.5, 3.5, 4]);
    // The same with c(1,1,0,0): the rest lasts to the end of follow-up, and 1.5 and 3.0 come out.
    const open = kaplanMeier([1, 2, 3, 4], [1, 1, 0, 0]);
    expect([0.25, 0.5, 0.75].map((p) => survivalQuantile(open, p).value)).toEqual([1.5, 3, null]);
  });

  it('limits come where the curve limits reach the level', () => {
    // R 4.2.2, survival 3.5-3, conf.type = "log-log": 3.5 (1, 6), 6 (1, NA), 8 (5, NA).
    const curve = kaplanMeier([1, 2, 3, 4, 5, 6, 7, 8], [1, 1, 0, 0, 1, 1, 0, 1]);
    expect(
      [0.25, 0.5, 0.75].map((p) => {
        const { value, interval } = survivalQuantile(curve, p);
        return [value, interval.low, interval.high];
      }),
    ).toEqual([
      [3.5, 1, 6],
      [6, 1, null],
      [8, 5, null],
    ]);
  });

  it('the one-pass quantile of weighted times is the same', () => {
    fc.assert(
      fc.property(followed, fc.constantFrom(0.25, 0.5, 0.8, 0.9), (observations, p) => {
        const sorted = [...observations].sort((a, b) => a.time - b.time);
        const times = sorted.map(({ time }) => time);
        const ended = sorted.map(({ ended }) => ended);
        const weights = sorted.map(({ weight }) => weight);
        const curve = kaplanMeier(times, ended, { weights });
        expect(weightedSurvivalQuantile(times, ended, weights, p)).toBe(survivalQuantile(curve, p).value);
      }),
    );
  });
});

describe('survivalAt and restrictedMean', () => {
  const curve = kaplanMeier([2, 5, 9], [1, 1, 0]);

  it('say nothing past the longest follow-up', () => {
    expect(survivalAt(curve, 9).value).toBeCloseTo(1 / 3, 12);
    expect(survivalAt(curve, 9.1).value).toBeNull();
    expect(restrictedMean(curve, 9.1).value).toBeNull();
  });

  it('before the first ending all are open', () => expect(survivalAt(curve, 1.9).value).toBe(1));

  it('without censoring the restricted mean is the mean of the smaller of time and horizon', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 200 }), { minLength: 1, maxLength: 30 }),
        fc.integer({ min: 1, max: 250 }),
        (times, horizon) => {
          const all = kaplanMeier(
            times,
            times.map(() => 1),
          );
          const mean = times.reduce((sum, time) => sum + Math.min(time, horizon), 0) / times.length;
          expect(restrictedMean(all, horizon).value).toBeCloseTo(mean, 9);
        },
      ),
    );
  });
});

describe('cumulativeIncidence', () => {
  it('shares of all causes and of those still open add up to one', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ time: fc.integer({ min: 1, max: 9 }), cause: fc.integer({ min: 0, max: 2 }) }), {
          minLength: 1,
        }),
        (observations) => {
          const times = observations.map(({ time }) => time);
          const last = Math.max(...times);
          const shares = cumulativeIncidence(
            times,
            observations.map(({ cause }) => cause),
            [last],
          );
          const curve = kaplanMeier(
            times,
            observations.map(({ cause }) => (cause === 0 ? 0 : 1)),
          );
          const gone = shares.reduce((sum, { incidence }) => sum + (incidence[0] ?? 0), 0);
          expect(gone + (survivalAt(curve, last).value ?? 0)).toBeCloseTo(1, 12);
        },
      ),
    );
  });

  it('a time past the longest follow-up has no share while some are open', () => {
    const [released] = cumulativeIncidence([1, 2], [1, 0], [0.5, 1, 2, 3]);
    expect(released?.incidence).toEqual([0, 0.5, 0.5, null]);
  });
});

describe('logRank', () => {
  it('a single group has nothing to be compared with', () => {
    expect(logRank([1, 2], [1, 1], [1, 1])).toMatchObject({ chiSquared: null, p: null, degreesOfFreedom: 0 });
  });

  it('three groups are tested on two degrees of freedom', () => {
    // R 4.2.2, survival 3.5-3: survdiff(Surv(c(1,2,3,4,5,6,7,8,9), c(1,1,0,1,1,1,1,0,1)) ~ rep(1:3, each = 3)).
    const test = logRank([1, 2, 3, 4, 5, 6, 7, 8, 9], [1, 1, 0, 1, 1, 1, 1, 0, 1], [1, 1, 1, 2, 2, 2, 3, 3, 3]);
    expect(test.degreesOfFreedom).toBe(2);
    expect(test.chiSquared).toBeCloseTo(8.21575258070699, 9);
    expect(test.p).toBeCloseTo(0.0164426569022406, 9);
  });
});
