import { describe, expect, it } from 'vitest';
import { openBook } from '../../src/finding/book.js';
import { stationFunnel } from '../../src/finding/station-funnel.js';
import { ask, cells } from './read-finding.js';
import { elkPoint, inspection, pineGate, type SmallRow, smallRecords, smallSum } from './small-records.js';

/** So many full inspections at a station, the first of them interceptions. */
function season(station: string, full: number, intercepted: number): SmallRow[] {
  return Array.from({ length: full }, (_, at) =>
    inspection(`${station}${at}`, { station, outcome: at < intercepted ? 'intercepted' : 'cleared' }),
  );
}

describe('station funnel', () => {
  it('has the exact interpolated limits of a rare event', () => {
    // tests/reference/statistics.json, funnel-rare: target 0.004, n = 1000; Spiegelhalter 2005 by R’s qbinom and pbinom.
    const book = openBook(smallRecords({ stations: [elkPoint], inspections: season('elk', 1000, 4) }), smallSum(null));
    const found = cells(ask(stationFunnel, book), 'target', 'low_998', 'low_95', 'high_95', 'high_998');
    const expected = [0.004, 0, 9.36107077875826e-5, 0.00786932286302387, 0.0109409515667174];
    expect(found).toEqual([expected.map((limit) => expect.closeTo(limit, 12))]);
  });

  it('places stations against all of them, and none under five interceptions', () => {
    const book = openBook(
      smallRecords({
        stations: [elkPoint, pineGate, { ...elkPoint, station: 'oak', name: 'Oak Landing' }],
        inspections: [
          ...season('elk', 100, 10),
          ...season('pine', 100, 4),
          ...season('oak', 300, 6),
          inspection('paper', { extent: 'paper check' }),
        ],
      }),
      smallSum(null),
    );
    const found = ask(stationFunnel, book);
    // By hand: 20 of 500 over all, 0.04. Elk Point's 10 of 100: a binomial with n = 100 and p = 0.04 exceeds 8 in 1.9 %
    // and 9 in 0.7 % of cases (binomial table), so that 10 lies above the 97.5 % point and below the 99.9 %.
    expect(cells(found, 'station', 'full', 'intercepted', 'target', 'place')).toEqual([
      ['Elk Point', 100, 10, 0.04, 'above 95 %'],
      ['Pine Gate', 100, 4, 0.04, 'too few'],
      ['Oak Landing', 300, 6, 0.04, 'inside'],
    ]);
    expect(found.leftOut).toEqual(['1 paper check is left out.']);
  });

  it('without any interception has no limits', () => {
    const book = openBook(smallRecords({ stations: [elkPoint], inspections: season('elk', 3, 0) }), smallSum(null));
    expect(cells(ask(stationFunnel, book), 'target', 'high_95', 'place')).toEqual([[0, null, 'too few']]);
  });
});
