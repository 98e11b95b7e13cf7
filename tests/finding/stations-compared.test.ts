import { describe, expect, it } from 'vitest';
import { openBook } from '../../src/finding/book.js';
import { stationsCompared } from '../../src/finding/stations-compared.js';
import { joinStrata } from '../../src/finding/traffic-strata.js';
import { many } from './many-inspections.js';
import { ask, cells, estimate } from './read-finding.js';
import { elkPoint, smallRecords, smallSum } from './small-records.js';

const oak = { ...elkPoint, station: 'oak', name: 'Oak Landing' };
const [june, july] = [{ started_at: '2025-06-10T18:00Z' }, { started_at: '2025-07-10T18:00Z' }];

describe('stations compared', () => {
  // Elk Point: June 2 of 20, July 0 of 20. Oak Landing: June 4 of 40, July 1 of 20. All: June 60, July 40.
  const book = openBook(
    smallRecords({
      stations: [elkPoint, oak],
      inspections: [
        ...many('a', 20, 2, june),
        ...many('b', 20, 0, july),
        ...many('c', 40, 4, { ...june, station: 'oak' }),
        ...many('d', 20, 1, { ...july, station: 'oak' }),
      ],
    }),
    smallSum(null),
  );
  const found = ask(stationsCompared, book);

  it('standardise to the traffic of all stations with Fay and Feuer’s limits', () => {
    // 0.6 × 2/20 + 0.4 × 0/20 = 0.06; limits by R 4.2.2's qgamma after Fay and Feuer 1997, eq. 7 and 8.
    const rate = estimate(found, 0, 'standardised');
    expect(rate.value).toBeCloseTo(0.06, 12);
    expect(rate.interval?.low).toBeCloseTo(0.0072662783563189, 10);
    expect(rate.interval?.high).toBeCloseTo(0.21674063003172, 10);
    expect(rate.cautions).toEqual(['under 5 events in a group']);
    expect(cells(found, 'station', 'full', 'intercepted', 'strata')).toEqual([
      ['Elk Point', 40, 2, 2],
      ['Oak Landing', 60, 5, 2],
    ]);
  });

  it('set what was seen beside what the rates of all would give', () => {
    // 20 × 6/60 + 20 × 1/40 = 2.5; limits of 2 events by R 4.2.2's poisson.test(2, 2.5).
    const ratio = estimate(found, 0, 'ratio');
    expect(cells(found, 'expected')[0]).toEqual([expect.closeTo(2.5, 12)]);
    expect(ratio).toMatchObject({ value: expect.closeTo(0.8, 12), numerator: 2 });
    expect(ratio.interval?.low).toBeCloseTo(0.096883711417586, 10);
    expect(ratio.interval?.high).toBeCloseTo(2.8898750670896, 10);
  });

  it('do not shrink stations that spread no more than chance, and rank nobody', () => {
    expect(estimate(found, 0, 'shrunk').why).toBe('stations spread no more than chance, or nothing was found');
    expect(found.columns.map(({ name }) => name)).not.toContain('rank');
    expect(found.said?.[0]).toMatch(/^Over-dispersion: stations spread 0\.\d\d times/);
  });

  it('have a one-sided limit where nothing was found', () => {
    const none = openBook(
      smallRecords({
        stations: [elkPoint, oak],
        inspections: [...many('a', 30, 0, june), ...many('b', 30, 3, { ...june, station: 'oak' })],
      }),
      smallSum(null),
    );
    const empty = ask(stationsCompared, none);
    // One stratum: the gamma limit of no event is −log(0.05) ÷ 30, as in the exact Poisson limit; 1.5 expected.
    expect(estimate(empty, 0, 'standardised').interval).toMatchObject({
      low: 0,
      high: expect.closeTo(-Math.log(0.05) / 30, 10),
      sides: 'upper',
    });
    expect(estimate(empty, 0, 'ratio').interval).toMatchObject({
      high: expect.closeTo(-Math.log(0.05) / 1.5, 10),
      sides: 'upper',
    });
  });
});

describe('joined strata', () => {
  it('lose no inspection and no weight', () => {
    // By hand: 4 + 7 reach ten; 12 stand alone; the last 3 join them.
    const joined = joinStrata({ cases: [1, 0, 2, 1], trials: [4, 7, 12, 3] }, [10, 20, 30, 5]);
    expect(joined).toEqual({ cases: [1, 3], trials: [11, 15], standard: [30, 35] });
  });

  it('take in neighbours where the station has less than a fifth of what the weight calls for', () => {
    // 12 of 100 inspections where the weight calls for 75: joined with the next.
    const joined = joinStrata({ cases: [0, 0], trials: [12, 88] }, [75, 25]);
    expect(joined.trials).toEqual([100]);
  });

  it('join months first, then settings, and statuses only where one has too few altogether', () => {
    // By hand: the station stands at ramps. Of positive waters it saw 20 of the 40 that all saw there, of negative ones 80 of
    // 120; those of the roadside, 20 and 60, weigh with the same status, though they stand beside the next one.
    const groups = ['positive', 'negative'].flatMap((status) =>
      ['launch', 'roadside'].map((setting) => [status, setting]),
    );
    const joined = joinStrata({ cases: [10, 0, 4, 0], trials: [20, 0, 80, 0] }, [40, 20, 120, 60], groups);
    expect(joined).toEqual({ cases: [10, 4], trials: [20, 80], standard: [60, 180] });
    const few = joinStrata({ cases: [1, 0, 4, 0], trials: [5, 0, 80, 0] }, [40, 20, 120, 60], groups);
    expect(few).toEqual({ cases: [5], trials: [85], standard: [240] });
  });

  it('take in the one before where what is left lacks its due', () => {
    // 11 of 100 inspections where the weight calls for 60, at the end of its group: both are joined.
    const joined = joinStrata({ cases: [0, 0, 0], trials: [89, 11, 0] }, [40, 10, 50], [[], [], []]);
    expect(joined.trials).toEqual([100]);
  });
});
