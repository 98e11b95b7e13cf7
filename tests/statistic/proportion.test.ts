import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Interval } from '../../src/statistic/estimate.js';
import { agrestiCoull } from '../../src/statistic/proportion/agresti-coull.js';
import { clopperPearson } from '../../src/statistic/proportion/clopper-pearson.js';
import { clusteredProportion } from '../../src/statistic/proportion/clustered.js';
import { proportionEstimate } from '../../src/statistic/proportion/estimate.js';
import { jeffreys } from '../../src/statistic/proportion/jeffreys.js';
import { midP } from '../../src/statistic/proportion/mid-p.js';
import { wilson, wilsonContinuity } from '../../src/statistic/proportion/wilson.js';
import { randomFrom } from '../../src/statistic/random.js';

const intervals: Readonly<Record<string, (x: number, n: number, confidence?: number) => Interval>> = {
  wilson,
  wilsonContinuity,
  clopperPearson,
  midP,
  jeffreys,
  agrestiCoull,
};

/** Counts from none to all of up to 100,000 trials. */
const counts = fc
  .integer({ min: 1, max: 100_000 })
  .chain((n) => fc.record({ n: fc.constant(n), x: fc.integer({ min: 0, max: n }) }));

function ends(interval: Interval): readonly [number, number] {
  if (interval.low === null || interval.high === null) throw new Error('an end is missing');
  return [interval.low, interval.high];
}

describe.each(Object.entries(intervals))('%s', (name, limits) => {
  it('contains its estimate and stays within 0 and 1', () => {
    fc.assert(
      fc.property(counts, ({ x, n }) => {
        const [low, high] = ends(limits(x, n));
        expect(low).toBeGreaterThanOrEqual(0);
        expect(low).toBeLessThanOrEqual(x / n + 1e-12);
        expect(high).toBeGreaterThanOrEqual(x / n - 1e-12);
        expect(high).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('widens with confidence', () => {
    // Jeffreys replaces a limit by 0 or 1 at the ends only, so the other limit still widens.
    fc.assert(
      fc.property(counts, ({ x, n }) => {
        const [low90, high90] = ends(limits(x, n, 0.9));
        const [low99, high99] = ends(limits(x, n, 0.99));
        expect(low99).toBeLessThanOrEqual(low90);
        expect(high99).toBeGreaterThanOrEqual(high90);
      }),
    );
  });

  it('mirrors when cases and others change places', () => {
    fc.assert(
      fc.property(counts, ({ x, n }) => {
        const [low, high] = ends(limits(x, n));
        const [mirroredLow, mirroredHigh] = ends(limits(n - x, n));
        expect(1 - mirroredHigh).toBeCloseTo(low, 11);
        expect(1 - mirroredLow).toBeCloseTo(high, 11);
      }),
    );
  });

  it('says nothing about no trials', () => expect(limits(0, 0)).toMatchObject({ low: null, high: null }));

  it(`refuses more cases than trials (${name})`, () => expect(() => limits(3, 2)).toThrow(RangeError));
});

describe('proportionEstimate', () => {
  it('zero cases give a one-sided upper limit, never a bare 0', () => {
    // 0 of 14: 19.3 %, Hanley & Lippman-Hand 1983.
    const { value, interval } = proportionEstimate({ cases: 0, trials: 14 });
    expect(value).toBe(0);
    expect(interval).toMatchObject({ low: 0, sides: 'upper' });
    expect(interval?.high).toBeCloseTo(0.193, 3);
  });

  it('nothing but cases gives the mirrored lower limit', () => {
    const { value, interval } = proportionEstimate({ cases: 14, trials: 14 });
    expect(value).toBe(1);
    expect(interval).toMatchObject({ high: 1, sides: 'lower' });
    expect(interval?.low).toBeCloseTo(1 - 0.193, 3);
  });

  it('no trials give no value and say why', () => {
    expect(proportionEstimate({ cases: 0, trials: 0 })).toMatchObject({
      value: null,
      interval: null,
      why: 'nothing was counted',
    });
  });

  it('under 20 clusters with trials there is a caution; from 20 on there is none', () => {
    const of = (size: number) => {
      const cases = Array.from({ length: size }, (_, i) => i % 2);
      // A day without inspections is no cluster.
      const clusters = { cases: [...cases, 0], trials: [...cases.map(() => 10), 0] };
      return proportionEstimate({ cases: cases.reduce((a, b) => a + b), trials: 10 * size, clusters });
    };
    expect(of(19).cautions).toEqual(['under 20 clusters']);
    expect(of(20).cautions).toEqual([]);
    expect(of(20).interval?.method).toContain('Korn-Graubard');
  });

  it('a single cluster falls back to the plain exact interval with a caution', () => {
    // 15 of 148: 0.0578 to 0.1617, Newcombe 1998 Table I.
    const one = proportionEstimate({ cases: 15, trials: 148, clusters: { cases: [15], trials: [148] } });
    expect(one.interval?.low).toBeCloseTo(0.0578, 4);
    expect(one.interval?.high).toBeCloseTo(0.1617, 4);
    expect(one.cautions).toEqual(['one cluster only: the limits take trials as independent']);
  });

  it('clusters that do not add up to the total are our own mistake', () => {
    expect(() => proportionEstimate({ cases: 2, trials: 9, clusters: { cases: [1], trials: [9] } })).toThrow(
      RangeError,
    );
  });
});

describe('clusteredProportion', () => {
  it('clusters that agree perfectly count no more than independent trials', () => {
    // The plain exact limits of 40 of 200 are the narrowest allowed; Parker et al. 2017.
    const same = clusteredProportion({ cases: Array(40).fill(1), trials: Array(40).fill(5) });
    const [low, high] = ends(clopperPearson(40, 200));
    expect(same.interval?.low).toBeLessThanOrEqual(low);
    expect(same.interval?.high).toBeGreaterThanOrEqual(high);
  });

  it('strata that differ take their difference out of the variance', () => {
    const counts = { cases: [1, 1, 9, 9], trials: [10, 10, 10, 10] };
    const together = clusteredProportion(counts);
    const apart = clusteredProportion({ ...counts, strata: [1, 1, 2, 2] });
    expect(apart.standardError).toBe(0);
    expect(together.standardError).toBeGreaterThan(0.2);
    expect(apart.degreesOfFreedom).toBe(2);
  });

  it('a stratum of one cluster still adds its distance from the overall share', () => {
    const lonely = clusteredProportion({ cases: [1, 1, 9], trials: [10, 10, 10], strata: [1, 1, 2] });
    expect(lonely.standardError).toBeGreaterThan(0);
  });

  it('covers a rare share at its stated confidence where the plain exact interval does not', () => {
    // 200 station-days of 5 to 60 craft; one day in twenty has fouled craft, and then each craft with a chance of
    // 10 %, so that 0.5 % are fouled in the long run. Three standard errors of the simulation are allowed.
    const random = randomFrom(20250704);
    const seasons = 1500;
    const truth = 0.1 * 0.05;
    const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0);
    const covers = ({ low, high }: Interval) => low !== null && high !== null && low <= truth && truth <= high;
    const covered = { clustered: 0, plain: 0 };
    for (let season = 0; season < seasons; season += 1) {
      const trials = Array.from({ length: 200 }, () => 5 + random.below(56));
      const cases = trials.map((n) => {
        if (random.uniform() >= 0.05) return 0;
        let count = 0;
        for (let i = 0; i < n; i += 1) count += random.uniform() < 0.1 ? 1 : 0;
        return count;
      });
      const counted = { cases: sum(cases), trials: sum(trials) };
      const { interval } = proportionEstimate({ ...counted, clusters: { cases, trials } });
      if (interval !== null && covers(interval)) covered.clustered += 1;
      if (covers(clopperPearson(counted.cases, counted.trials))) covered.plain += 1;
    }
    const slack = 3 * Math.sqrt((0.95 * 0.05) / seasons);
    expect(covered.clustered / seasons).toBeGreaterThan(0.95 - slack);
    expect(covered.plain / seasons).toBeLessThan(0.8);
  }, 5000);
});
