import { describe, expect, it } from 'vitest';
import { openBook } from '../../src/finding/book.js';
import { effort } from '../../src/finding/effort.js';
import { many } from './many-inspections.js';
import { ask, cells, estimate } from './read-finding.js';
import { elkPoint, type SmallRow, smallRecords, smallSum } from './small-records.js';

describe('effort', () => {
  // tests/reference/statistics.json, fieller-city: the 1930 population of ten cities by that of 1920 (Cochran 1977).
  const y = [143, 104, 69, 260, 75, 63, 50, 48, 111, 50];
  const x = [138, 93, 61, 179, 48, 37, 29, 23, 30, 2];
  const date = (day: number) => `2025-06-${String(day + 1).padStart(2, '0')}`;
  const days: SmallRow[] = [
    ...x.map((hours, day) => ({ station: 'elk', date: date(day), state: 'open', staff_hours: hours })),
    { station: 'elk', date: date(20), state: 'open', staff_hours: null },
    { station: 'elk', date: date(21), state: 'closed' },
    { station: 'elk', date: date(22), state: 'not recorded' },
  ];
  const inspections = [
    ...y.flatMap((count, day) => many(`a${day}-`, count, day === 0 ? 3 : 0, { started_at: `${date(day)}T18:00Z` })),
    // On a day whose hours nobody wrote down: in no rate an hour.
    ...many('b', 40, 9, { started_at: `${date(20)}T18:00Z` }),
  ];
  const book = openBook(smallRecords({ stations: [elkPoint], station_days: days, inspections }), smallSum(null));
  const found = ask(effort, book);

  it('counts days that were open, closed and not recorded apart', () => {
    expect(cells(found, 'open', 'closed', 'not_recorded', 'with_hours')).toEqual([[11, 1, 1, 10]]);
    expect(found.leftOut).toEqual(['1 open day has no staff hours: in no rate an hour.']);
  });

  it('takes inspections and hours of the same days, with Fieller’s limits', () => {
    const rate = estimate(found, 0, 'per_staff_hour');
    expect(rate).toMatchObject({ value: 1.5203125, numerator: 973, denominator: 640 });
    expect(rate.interval?.low).toBeCloseTo(1.19595644445646, 8);
    expect(rate.interval?.high).toBeCloseTo(2.46137515484951, 8);
    expect(rate.cautions).toEqual(['under 20 station days']);
  });

  it('gives interceptions per 1,000 hours with exact limits', () => {
    // R 4.2.2: poisson.test(3, 0.64)$conf.int.
    const rate = estimate(found, 0, 'per_1000_hours');
    expect(rate).toMatchObject({ numerator: 3, value: expect.closeTo(3 / 0.64, 12) });
    expect(rate.interval?.low).toBeCloseTo(0.966675192, 8);
    expect(rate.interval?.high).toBeCloseTo(13.698864171, 8);
  });

  it('has no sum of open hours where nobody wrote down when a station opened, and none to add where it was closed', () => {
    expect(cells(found, 'open_hours')).toEqual([[null]]);
    expect(cells(ask(effort, book, [], [11]), 'open_hours')).toEqual([[0]]);
    const hours = { opened_at: `${date(1)}T12:00Z`, closed_at: `${date(1)}T20:30Z` };
    const station_days = [{ station: 'elk', date: date(1), state: 'open', ...hours }, days[0]!];
    const some = openBook(smallRecords({ stations: [elkPoint], station_days }), smallSum(null));
    expect(cells(ask(effort, some), 'open_hours')).toEqual([[8.5]]);
  });

  it('is no rate without recorded hours', () => {
    const none = ask(effort, book, [], [10, 11]);
    expect(estimate(none, 0, 'per_staff_hour').why).toBe('no staff hours were recorded');
    expect(cells(none, 'per_1000_hours')).toEqual([[null]]);
  });
});
