import { expect, test } from 'vitest';
import { openBook } from '../../../src/finding/book.js';
import { staffedHours } from '../../../src/finding/staffing/staffed-hours.js';
import { washReplay } from '../../../src/finding/staffing/wash-replay.js';
import { ask, cells, estimate } from '../read-finding.js';
import { elkPoint, inspection, type SmallRow, smallRecords, smallSum } from '../small-records.js';

const at = (minute: number): string => new Date(Date.parse('2025-06-01T18:00Z') + minute * 60_000).toISOString();
/** A wash of ten minutes, ordered at a minute and begun three minutes later. */
const wash = (number: string, minute: number, more: SmallRow = {}): SmallRow => ({
  ...{ wash: number, inspection: number, ordered_at: at(minute), started_at: at(minute + 3) },
  ...{
    finished_at: at(minute + 13),
    released_at: at(minute + 14),
    ending: 'released',
    method: 'hot spray',
    unit: 'one',
  },
  ...more,
});

function bookOf(washes: readonly SmallRow[]) {
  const inspections = washes.map(({ inspection: number }) => inspection(String(number)));
  const day = { station: 'elk', date: '2025-06-01', state: 'open', staff_hours: 8 };
  const hours = { opened_at: '2025-06-01T12:00Z', closed_at: '2025-06-01T22:00Z' };
  const records = { stations: [elkPoint], inspections, decontaminations: washes, station_days: [{ ...day, ...hours }] };
  return openBook(smallRecords(records), smallSum('2025-06-02T00:00Z'));
}

test('waits with one unit, and with one more, are those worked by hand', () => {
  // Ordered at 0, 5 and 7, ten minutes each: one unit makes them wait 0, 5 and 13; two make them wait 0, 0 and 3.
  const found = ask(washReplay, bookOf([wash('a', 0), wash('b', 5), wash('c', 7)]), ['station']);
  expect(cells(found, 'station', 'washes', 'units', 'recorded', 'replayed', 'one_more', 'saved', 'one_fewer')).toEqual([
    ['Elk Point', 3, 1, 3, 6, 1, 5, null],
  ]);
  expect(estimate(found, 0, 'saved_hours').value).toBeCloseTo(15 / 60, 12);
  // Thirty minutes of washing in ten hours.
  expect(cells(found, 'busy')[0]![0]).toBeCloseTo(0.05, 12);
  expect(estimate(found, 0, 'one_fewer').why).toBe('no unit would be left');
});

test('one unit fewer is replayed where one is left', () => {
  const washes = [wash('a', 0), wash('b', 5, { unit: 'two' }), wash('c', 7)];
  const found = ask(washReplay, bookOf(washes), ['station']);
  expect(cells(found, 'units', 'replayed', 'one_more', 'one_fewer')).toEqual([[2, 1, 0, 6]]);
});

test('replays that never differ carry no interval of no width', () => {
  const saved = estimate(ask(washReplay, bookOf([wash('a', 0)])), 0, 'saved');
  expect(saved).toMatchObject({ value: 0, interval: null, why: 'all replays gave the same' });
});

test('washes of a station where no unit is named are left out and counted', () => {
  const found = ask(washReplay, bookOf([wash('a', 0, { unit: null })]));
  expect(found.leftOut).toEqual(['1 wash is left out: no unit or no moment of order is known.']);
  expect(cells(found, 'replayed')).toEqual([[null]]);
});

test('one unit at two stations is said', () => {
  const washes = [wash('a', 0), wash('b', 5)];
  const inspections = [inspection('a'), inspection('b', { station: 'fir' })];
  const fir = { ...elkPoint, station: 'fir', name: 'Fir Ramp' };
  const records = smallRecords({ stations: [elkPoint, fir], inspections, decontaminations: washes });
  const { said } = ask(washReplay, openBook(records, smallSum('2025-06-02T00:00Z')), ['station']);
  expect(said).toEqual(['one washed at Elk Point and Fir Ramp: each is replayed as if it had the unit to itself.']);
});

test('units that cannot keep up are said by the name of their station', () => {
  // Ten open hours, and seventy washes of ten minutes.
  const washes = Array.from({ length: 70 }, (_, at) => wash(`${at}`, at));
  expect(ask(washReplay, bookOf(washes), ['station']).said).toEqual([
    'Elk Point: washes take longer than the units are there; a backlog grows.',
  ]);
});

test('staff hours are spread over the hours of opening, and inspections counted in theirs', () => {
  const book = bookOf([wash('a', 0), wash('b', 5)]);
  const found = ask(staffedHours, book);
  // 6 to 16 by the clock of Elk Point, 0.8 staff each hour; both inspections began at 18:00 UTC, noon there.
  const rows = cells(found, 'weekday', 'hour', 'days', 'staff_hours', 'craft');
  expect(rows).toHaveLength(10);
  expect(rows[0]).toEqual(['Sunday', 6, 1, 0.8, 0]);
  expect(rows[6]).toEqual(['Sunday', 12, 1, 0.8, 2]);
  expect(cells(found, 'an_hour')[6]![0]).toBeCloseTo(2.5, 12);
});
