import { describe, expect, it } from 'vitest';
import { openBook } from '../../src/finding/book.js';
import { interceptions } from '../../src/finding/interceptions.js';
import { ask, cells, estimate } from './read-finding.js';
import { elkPoint, inspection, look, pineGate, smallRecords, smallSum } from './small-records.js';

const book = openBook(
  smallRecords({
    stations: [elkPoint, pineGate],
    inspections: [
      inspection('a', { craft: 'x', outcome: 'intercepted' }),
      inspection('b', { craft: 'x', started_at: '2025-06-02T18:00Z' }),
      inspection('c', { craft: 'y', started_at: '2025-06-02T19:00Z', outcome: 'intercepted' }),
      inspection('d', { started_at: '2025-06-03T18:00Z' }),
      inspection('e', { extent: 'paper check', craft: 'z' }),
      inspection('f', { station: 'pine', craft: 'x', started_at: '2025-06-04T18:00Z' }),
    ],
    checks: [
      look('a', 'propeller', 'mussels'),
      look('b', 'propeller', 'clean'),
      look('c', 'propeller', 'mussels', 'none', { abundance: 'trace' }),
      look('d', 'propeller', 'not checked'),
      look('f', 'propeller', 'mussels', 'none', { abundance: null }),
    ],
  }),
  smallSum(null),
);

describe('interceptions', () => {
  it('count paper checks apart and never in the denominator', () => {
    // By hand: full a, b, c, d, f; paper e; intercepted a, c.
    expect(cells(ask(interceptions, book), 'inspections', 'paper_checks', 'full', 'intercepted')).toEqual([
      [6, 1, 5, 2],
    ]);
    expect(estimate(ask(interceptions, book), 0, 'interception')).toMatchObject({
      value: 2 / 5,
      numerator: 2,
      denominator: 5,
    });
  });

  it('call established only what is attached, above trace, and known to be', () => {
    // By hand: a is established; c is trace; b is clean; d was not looked at and f’s number was left open.
    const found = ask(interceptions, book);
    expect(cells(found, 'established', 'depth_known')).toEqual([[1, 3]]);
    expect(found.leftOut.join(' ')).toContain('2 full inspections are left out of the established rate');
  });

  it('count each craft once a season where first inspections are asked for', () => {
    // By hand: x is first at a, y at c; d has no pseudonym, z only a paper check.
    expect(cells(ask(interceptions, book), 'first', 'first_intercepted')).toEqual([[2, 2]]);
  });

  it('say where parts had mussels but the outcome says otherwise', () => {
    expect(ask(interceptions, book).leftOut.join(' ')).toContain('1 full inspection has mussels on a part');
  });

  it('are split by any field, stations by their shown names', () => {
    expect(cells(ask(interceptions, book, ['station', 'season']), 'station', 'season', 'full', 'intercepted')).toEqual([
      ['Elk Point', 2025, 4, 2],
      ['Pine Gate', 2025, 1, 0],
    ]);
  });

  it('with no case have an upper limit, never a zero width', () => {
    const none = estimate(ask(interceptions, book, ['station']), 1, 'interception');
    expect(none.value).toBe(0);
    // One-sided, 1 − 0.05^(1/1): Louis 1981, American Statistician 35:154.
    expect(none.interval?.sides).toBe('upper');
    expect(none.interval?.high).toBeCloseTo(0.95, 12);
  });

  it('of no inspections have no value, and say why', () => {
    const nothing = estimate(ask(interceptions, book, [], []), 0, 'interception');
    expect(nothing.value).toBeNull();
    expect(nothing.why).not.toBeNull();
  });

  it('warn of few station-days, and show the unclustered interval beside', () => {
    const found = ask(interceptions, book);
    expect(estimate(found, 0, 'interception').cautions.join()).toContain('under 20 clusters');
    expect(estimate(found, 0, 'interception_unclustered').interval?.method).toContain('Clopper-Pearson');
  });
});
