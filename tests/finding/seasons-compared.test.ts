import { describe, expect, it } from 'vitest';
import { openBook } from '../../src/finding/book.js';
import { seasonsCompared } from '../../src/finding/seasons-compared.js';
import { many } from './many-inspections.js';
import { ask, cells, estimate } from './read-finding.js';
import { elkPoint, inspection, smallRecords, smallSum } from './small-records.js';

const on = (day: string) => ({ started_at: `${day}T18:00Z` });
const change = (field: string) => ({
  definitionChanges: [{ table: 'inspections' as const, field, season: 2025, was: 'one thing', is: 'another' }],
});

describe('seasons compared', () => {
  const inspections = [
    // 48 of 80 and 56 of 70: tests/reference/statistics.json, newcombe10-a (Newcombe 1998, method 10, example a).
    ...many('a', 80, 48, on('2024-06-10')),
    ...many('b', 70, 56, on('2025-06-10')),
    // Outside what both seasons have.
    inspection('early', { ...on('2024-04-01'), outcome: 'intercepted' }),
    inspection('paper', { ...on('2025-06-10'), extent: 'paper check' }),
  ];
  const open = (sum = {}) => openBook(smallRecords({ stations: [elkPoint], inspections }), smallSum(null, sum));

  it('take only the stretch of the calendar that every season has', () => {
    const found = ask(seasonsCompared, open());
    expect(cells(found, 'season', 'full', 'cases')).toEqual([
      [2024, 80, 48],
      [2025, 70, 56],
    ]);
    expect(found.leftOut).toEqual(['1 paper check is left out.', '1 full inspection lies outside the shared window.']);
    expect(found.said?.[1]).toBe('Compared from 10 June to 10 June, which every season has.');
  });

  it('have Newcombe’s limits on the change', () => {
    const { value, interval } = estimate(ask(seasonsCompared, open()), 1, 'difference');
    expect(value).toBeCloseTo(0.2, 12);
    expect(interval?.low).toBeCloseTo(0.052431472402365, 10);
    expect(interval?.high).toBeCloseTo(0.333872654036906, 10);
  });

  it('do not compare across a changed definition of what they count, and do across others', () => {
    const broken = ask(seasonsCompared, open(change('outcome')));
    expect(estimate(broken, 1, 'difference').why).toBe('the meaning of outcome changed in 2025');
    expect(estimate(broken, 1, 'ratio').value).toBeNull();
    expect(estimate(ask(seasonsCompared, open(change('standing_water'))), 1, 'difference').value).not.toBeNull();
    const water = ask(seasonsCompared, open(change('standing_water')), [], undefined, { measure: 'standing water' });
    expect(estimate(water, 1, 'difference').why).toBe('the meaning of standing water changed in 2025');
  });

  it('test a trend from three seasons of one meaning up', () => {
    // Fleiss's smokers, tests/reference/statistics.json, trend-fleiss-smokers: P 0.00413; the departure is R 4.2.2's
    // chisq.test (12.6004) less that trend (8.2249) on two degrees of freedom: P 0.1122.
    const smokers = [
      ...many('a', 86, 83, on('2022-06-10')),
      ...many('b', 93, 90, on('2023-06-10')),
      ...many('c', 136, 129, on('2024-06-10')),
      ...many('d', 82, 70, on('2025-06-10')),
    ];
    const records = smallRecords({ stations: [elkPoint], inspections: smokers });
    const said = ask(seasonsCompared, openBook(records, smallSum(null))).said?.at(-1);
    expect(said).toContain('Trend over 2022, 2023, 2024, 2025: −33.42 per 1,000 a season, P 0.004; departure');
    expect(said).toContain('P 0.112');
    const broken = ask(seasonsCompared, openBook(records, smallSum(null, change('outcome')))).said?.at(-1);
    expect(broken).toBe('No trend is tested: it takes three seasons with one meaning, and there are 1.');
  });

  it('do not compare across a definition that changed in a season without records', () => {
    const apart = [...many('a', 80, 48, on('2023-06-10')), ...many('b', 70, 56, on('2026-06-10'))];
    const records = smallRecords({ stations: [elkPoint], inspections: apart });
    const found = ask(seasonsCompared, openBook(records, smallSum(null, change('outcome'))));
    expect(estimate(found, 1, 'difference').why).toBe('the meaning of outcome changed in 2025');
  });

  it('say a P too small for three decimals as tables do, and never as 0', () => {
    const rising = [2022, 2023, 2024].flatMap((year, at) => many(`${year}`, 200, 10 + 60 * at, on(`${year}-06-10`)));
    const records = smallRecords({ stations: [elkPoint], inspections: rising });
    // prop.trend.test(c(10, 70, 130), rep(200, 3)) in R 4.2.2 gives a P below 2.2e-16.
    expect(ask(seasonsCompared, openBook(records, smallSum(null))).said?.at(-1)).toContain('a season, P under 0.001;');
  });

  it('say nothing of a window where there is no season', () => {
    const none = openBook(smallRecords({ stations: [elkPoint] }), smallSum(null));
    expect(ask(seasonsCompared, none).said).toEqual(['Cases are full inspections that ended in an interception.']);
  });
});
