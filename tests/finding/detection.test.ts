import { describe, expect, it } from 'vitest';
import { openBook } from '../../src/finding/book.js';
import { detection } from '../../src/finding/detection.js';
import { ask, cells, estimate } from './read-finding.js';
import { elkPoint, inspection, look, smallRecords, smallSum } from './small-records.js';

/** Craft whose propeller was looked at twice: so many found by both, by the first, by the second, by neither. */
function twice(both: number, firstOnly: number, secondOnly: number, neither: number) {
  const results = [
    ...Array.from({ length: both }, () => ['mussels', 'mussels'] as const),
    ...Array.from({ length: firstOnly }, () => ['mussels', 'clean'] as const),
    ...Array.from({ length: secondOnly }, () => ['clean', 'mussels'] as const),
    ...Array.from({ length: neither }, () => ['clean', 'clean'] as const),
  ];
  return openBook(
    smallRecords({
      stations: [elkPoint],
      inspections: results.map((_, at) => inspection(`${at}`)),
      checks: [
        ...results.map(([first], at) => look(`${at}`, 'propeller', first)),
        look('0', 'transom', 'not checked'),
        look('0', 'anchor', 'clean'),
      ],
      rechecks: [
        ...results.map(([, second], at) => look(`${at}`, 'propeller', second)),
        look('0', 'transom', 'clean'),
        look('0', 'anchor', 'not checked'),
      ],
    }),
    smallSum(null),
  );
}

describe('detection', () => {
  it('is what the second look found and the first had, too, with a range for those missed by both', () => {
    // tests/reference/statistics.json, cr-turtles: n1 = 10, n2 = 15, m = 5: chance ⅓, Chapman 28.3333 of which 20 were
    // seen, log-normal limits 22.38526 and 49.11397.
    const found = ask(detection, twice(5, 5, 10, 30));
    expect(cells(found, 'unit', 'looked_twice', 'both', 'first_only', 'second_only')).toEqual([
      ['parts', 50, 5, 5, 10],
      ['craft', 50, 5, 5, 10],
    ]);
    expect(estimate(found, 0, 'first_finds')).toMatchObject({ numerator: 5, denominator: 15 });
    const missed = estimate(found, 0, 'missed');
    expect(missed.value).toBeCloseTo(28.3333333333333 - 20, 8);
    expect(missed.interval?.low).toBeCloseTo(22.3852617160398 - 20, 8);
    expect(missed.interval?.high).toBeCloseTo(49.1139726837782 - 20, 8);
    expect(found.leftOut).toEqual([
      '1 second look has no first look at the same part and side.',
      '1 second look did not look at the part, or left open what it found.',
    ]);
  });

  it('puts agreement on finds before kappa', () => {
    // tests/reference/statistics.json, kappa-wiki: 20, 5, 10, 15: positive agreement 0.72727, kappa 0.4.
    const found = ask(detection, twice(20, 5, 10, 15));
    expect(estimate(found, 0, 'positive').value).toBeCloseTo(0.727272727272727, 12);
    const kappa = estimate(found, 0, 'kappa');
    expect(kappa.value).toBeCloseTo(0.4, 12);
    expect(kappa.interval?.low).toBeCloseTo(0.151092290476661, 10);
  });

  it('has no limits of no width where one look found all that the other did', () => {
    const found = ask(detection, twice(6, 0, 0, 10));
    expect(estimate(found, 0, 'missed')).toMatchObject({ value: 0, interval: null });
    expect(estimate(found, 0, 'missed').why).toContain('no width');
    expect(estimate(found, 0, 'kappa')).toMatchObject({ value: 1, interval: null });
    expect(estimate(found, 0, 'kappa').why).toContain('no width');
    expect(estimate(ask(detection, twice(6, 1, 0, 10)), 0, 'missed').interval).toBe(null);
  });

  it('is withheld under five found by both, and says so', () => {
    const found = ask(detection, twice(4, 5, 10, 30));
    for (const name of ['first_finds', 'positive', 'kappa', 'missed']) {
      expect(estimate(found, 0, name)).toMatchObject({ value: null, interval: null, why: 'under 5 found by both' });
    }
    expect(cells(found, 'both')[0]).toEqual([4]);
  });
});
