import { describe, expect, it } from 'vitest';
import { clusterWeights, lonelyStrata } from '../../src/statistic/resample/cluster-weights.js';
import { percentileInterval } from '../../src/statistic/resample/percentile-interval.js';
import { weightedTotals } from '../../src/statistic/resample/weighted-totals.js';

const STRATA = [0, 0, 0, 7, 1, 1];

describe('clusterWeights', () => {
  const weights = clusterWeights(STRATA, 4000, 11);
  const row = (resample: number) => [...weights.subarray(resample * 6, resample * 6 + 6)];

  it('every resample draws as many clusters from a stratum as it has', () => {
    for (let resample = 0; resample < 4000; resample += 1) {
      const [a = 0, b = 0, c = 0, alone, d = 0, e = 0] = row(resample);
      expect([a + b + c, alone, d + e]).toEqual([3, 1, 2]);
    }
  });

  it('a stratum of one is named, since it never varies', () => expect(lonelyStrata(STRATA)).toEqual([7]));

  it('weights have the mean and variance of a multinomial draw', () => {
    // A cluster of three: mean 1, variance 3 · ⅓ · ⅔ = 2/3; six standard errors of 4,000 draws.
    const draws = Array.from({ length: 4000 }, (_, resample) => weights[resample * 6] ?? 0);
    const mean = draws.reduce((a, b) => a + b) / 4000;
    const variance = draws.reduce((sum, draw) => sum + (draw - 1) ** 2, 0) / 4000;
    expect(Math.abs(mean - 1)).toBeLessThan(6 * Math.sqrt(2 / 3 / 4000));
    expect(Math.abs(variance - 2 / 3)).toBeLessThan(0.1);
  });

  it('the same seed draws the same, another seed does not', () => {
    expect(clusterWeights(STRATA, 50, 3)).toEqual(clusterWeights(STRATA, 50, 3));
    expect(clusterWeights(STRATA, 50, 3)).not.toEqual(clusterWeights(STRATA, 50, 4));
  });
});

describe('weightedTotals', () => {
  it('counts each total as often as its cluster was drawn', () => {
    const weights = Uint8Array.of(2, 0, 1, 0, 3, 0);
    const totals = { cluster: Uint32Array.of(2, 0), total: Float64Array.of(10, 0.5) };
    expect([...weightedTotals(weights, totals, 2, 3)]).toEqual([11, 0]);
  });

  it('is the sum by the weights in every resample, however many there are', () => {
    for (const resamples of [1, 3, 4, 5, 8, 11]) {
      const weights = Uint8Array.from({ length: resamples * 3 }, (_, at) => (at * 7) % 5);
      const own = (resample: number): number => 0.1 * weights[3 * resample + 1]! + 0.7 * weights[3 * resample + 2]!;
      const totals = { cluster: [1, 2], total: [0.1, 0.7] };
      expect([...weightedTotals(weights, totals, resamples, 3)]).toEqual(
        Array.from({ length: resamples }, (_, r) => own(r)),
      );
    }
  });

  it('weights of another shape are our own mistake', () => {
    expect(() => weightedTotals(new Uint8Array(5), { cluster: [], total: [] }, 2, 3)).toThrow(RangeError);
  });
});

describe('percentileInterval', () => {
  it('is the middle share by type 7 quantiles', () => {
    // 0 … 100: the 2.5 % quantile of type 7 is 2.5; Hyndman & Fan 1996.
    const interval = percentileInterval(
      Float64Array.from({ length: 101 }, (_, i) => 100 - i),
      0.95,
      'resampled',
    );
    expect(interval?.low).toBeCloseTo(2.5, 12);
    expect(interval?.high).toBeCloseTo(97.5, 12);
  });

  it('one resample without a value means no interval', () => {
    expect(percentileInterval(Float64Array.of(1, 2, Number.NaN), 0.95, 'resampled')).toBeNull();
    expect(percentileInterval(Float64Array.of(1, 2, Number.POSITIVE_INFINITY), 0.95, 'resampled')).toBeNull();
    expect(percentileInterval(new Float64Array(0), 0.95, 'resampled')).toBeNull();
  });
});
