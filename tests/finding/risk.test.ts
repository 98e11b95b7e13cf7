import { describe, expect, it } from 'vitest';
import { adjustedOdds } from '../../src/finding/adjusted-odds.js';
import { openBook } from '../../src/finding/book.js';
import { riskRatios } from '../../src/finding/risk-ratios.js';
import { many } from './many-inspections.js';
import { ask, cells, estimate } from './read-finding.js';
import { elkPoint, inspection, pineGate, type SmallRow, smallRecords, smallSum } from './small-records.js';

const bookOf = (inspections: readonly SmallRow[]) =>
  openBook(smallRecords({ stations: [elkPoint, pineGate], inspections }), smallSum(null));
const near = (value: number) => expect.closeTo(value, 8);

describe('risk ratios', () => {
  it('compare a level with its reference by Koopman’s score', () => {
    // 7 of 34 against 1 of 34: tests/reference/statistics.json, rr-koopman-perondi, from Perondi et al. 2004.
    const book = bookOf([
      ...many('a', 34, 7, { hauled_by: 'commercial' }),
      ...many('b', 34, 1, { hauled_by: 'owner' }),
      inspection('c', { extent: 'paper check', hauled_by: 'owner', outcome: 'intercepted' }),
    ]);
    const found = ask(riskRatios, book);
    const haul = cells(found, 'factor', 'level', 'full', 'intercepted', 'ratio');
    expect(haul.slice(0, 2)).toEqual([
      ['hauled by', 'owner', 34, 1, null],
      ['hauled by', 'commercial', 34, 7, near(7)],
    ]);
    const ratio = estimate(found, 1, 'ratio');
    expect(ratio.interval).toMatchObject({ low: near(1.22085285351481), high: near(42.5757176097604) });
    expect(ratio.cautions).toEqual(['under 5 events in a group']);
    expect(estimate(found, 0, 'ratio').why).toBe('the reference itself');
    expect(found.leftOut[0]).toBe('1 paper check is left out.');
    expect(found.leftOut).toContain('68 full inspections have no last water’s status recorded.');
  });

  it('compare like with like over strata of season, direction and setting', () => {
    // The Doll and Hill table: tests/reference/statistics.json, mh-dollhill; the risk ratio of Greenland and Robins.
    const book = bookOf([
      ...many('a', 647 + 622, 647, { hauled_by: 'commercial' }),
      ...many('b', 2 + 27, 2, { hauled_by: 'owner' }),
      ...many('c', 41 + 28, 41, { hauled_by: 'commercial', station: 'pine' }),
      ...many('d', 19 + 32, 19, { hauled_by: 'owner', station: 'pine' }),
    ]);
    const pooled = estimate(ask(riskRatios, book), 1, 'pooled_ratio');
    expect(pooled.value).toBeCloseTo(2.47511910351613, 8);
    expect(pooled.interval).toMatchObject({ low: near(1.58308666192431), high: near(3.86979103793586) });
  });
});

describe('adjusted odds', () => {
  /** Everything that the model asks about, recorded. */
  const known: SmallRow = {
    last_waterbody: 'lake',
    last_on_water: '2025-05-30',
    standing_water: 'no',
    vegetation: 'no',
    hauled_by: 'owner',
  };
  const waterbodies: SmallRow[] = [{ waterbody: 'lake', name: 'Lake', status: 'negative', status_from: '2020-01-01' }];
  const whole = (inspections: readonly SmallRow[]) =>
    openBook(smallRecords({ stations: [elkPoint, pineGate], waterbodies, inspections }), smallSum(null));

  it('of one factor are the odds with half a case added to each group, and leave out what was not recorded', () => {
    // Heinze and Schemper 2002, section 2: ½ to each cell of a two by two table. 7 of 34 and 0 of 34.
    const book = whole([
      ...many('a', 34, 7, { ...known, hauled_by: 'commercial' }),
      ...many('b', 34, 0, known),
      inspection('c', { ...known, vegetation: null }),
    ]);
    const found = ask(adjustedOdds, book);
    expect(cells(found, 'factor', 'level', 'reference', 'full', 'intercepted')).toEqual([
      ['hauled by', 'commercial', 'owner', 34, 7],
    ]);
    const odds = estimate(found, 0, 'odds_ratio');
    expect(odds.value).toBeCloseTo((7.5 * 34.5) / (27.5 * 0.5), 4);
    expect(odds.interval?.low).toBeGreaterThan(1);
    expect(odds.interval?.high).toBeGreaterThan(odds.value!);
    expect(found.leftOut).toEqual(['1 full inspection lacks one of the factors: in no model.']);
    expect(found.said).toEqual(['1 test was made; P, Holm is adjusted for those of its model.']);
  });

  it('say which levels cannot be told apart', () => {
    const roadside = { ...known, station: 'pine', direction: 'roadside' };
    const found = ask(adjustedOdds, whole([...many('a', 20, 3, known), ...many('b', 20, 1, roadside)]));
    expect(cells(found, 'factor', 'odds_ratio').map(([factor]) => factor)).toEqual(['direction', 'setting']);
    expect(estimate(found, 0, 'odds_ratio').why).toBeNull();
    expect(estimate(found, 1, 'odds_ratio').why).toBe('cannot be told apart from the levels above');
  });
});
