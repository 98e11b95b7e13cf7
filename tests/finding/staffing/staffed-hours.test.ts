import { expect, test } from 'vitest';
import { openBook } from '../../../src/finding/book.js';
import { staffedHours } from '../../../src/finding/staffing/staffed-hours.js';
import { ask, cells } from '../read-finding.js';
import { elkPoint, inspection, type SmallRow, smallRecords, smallSum } from '../small-records.js';

/** Sunday, 1 June 2025, open from 20:00 to 02:00 by the clock of Elk Point (UTC−6 in June), one person for six hours. */
const evening: SmallRow = {
  ...{ station: 'elk', date: '2025-06-01', state: 'open', staff_hours: 6 },
  ...{ opened_at: '2025-06-02T02:00Z', closed_at: '2025-06-02T08:00Z' },
};
/** Inspections at 21:30 on that Sunday, and at 00:30, 01:59 and 02:00 on the Monday. */
const begun = ['2025-06-02T03:30Z', '2025-06-02T06:30Z', '2025-06-02T07:59Z', '2025-06-02T08:00Z'];
const inspections = begun.map((started_at, at) => inspection(`${at}`, { started_at }));

const bookOf = (days: readonly SmallRow[]) =>
  openBook(smallRecords({ stations: [elkPoint], inspections, station_days: days }), smallSum('2025-06-04T00:00Z'));

/** The hours in which anything began, with the inspections. Worked by hand from the clock. */
const busy = (days: readonly SmallRow[], rows?: readonly number[]) =>
  cells(ask(staffedHours, bookOf(days), [], rows), 'weekday', 'hour', 'days', 'craft').filter(
    ([, , , craft]) => craft !== 0,
  );

const night = [
  ['Monday', 0, 1, 1],
  ['Monday', 1, 1, 1],
  ['Sunday', 21, 1, 1],
];

test('inspections after midnight belong to the evening whose hours reach there, where the next date has no station day', () => {
  expect(busy([evening])).toEqual(night);
});

test('they belong to it where the next date is closed, or opens later', () => {
  expect(busy([evening, { station: 'elk', date: '2025-06-02', state: 'closed' }])).toEqual(night);
  const monday = { ...evening, date: '2025-06-02', opened_at: '2025-06-02T12:00Z', closed_at: '2025-06-02T18:00Z' };
  const found = ask(staffedHours, bookOf([evening, monday]));
  expect(cells(found, 'weekday', 'hour', 'days', 'craft').filter(([, , , craft]) => craft !== 0)).toEqual(night);
  // 02:00 is past the evening's closing and on Monday's own date, when nobody was open.
  expect(found.leftOut).toEqual([
    '1 inspection was begun in an hour in which no station was open for half: in no hour here.',
  ]);
});

test('they are not counted with the next date where only that one is asked of', () => {
  const monday = { ...evening, date: '2025-06-02', opened_at: '2025-06-02T12:00Z', closed_at: '2025-06-02T18:00Z' };
  expect(busy([evening, monday], [1])).toEqual([]);
  expect(busy([evening, monday], [0])).toEqual(night);
});

test('an inspection after the next day has opened is its own, though the evening ran on', () => {
  const monday = { ...evening, date: '2025-06-02', opened_at: '2025-06-02T07:00Z', closed_at: '2025-06-02T12:00Z' };
  // Monday opened at 01:00: the inspection of 01:59 is Monday's, and so is that of 02:00.
  expect(busy([evening, monday], [1])).toEqual([
    ['Monday', 1, 1, 1],
    ['Monday', 2, 1, 1],
  ]);
});

test('other stations’ inspections of the same night are not counted with it', () => {
  const other = inspection('other', { station: 'pine', started_at: '2025-06-02T07:30Z' });
  const pine = { ...elkPoint, station: 'pine', name: 'Pine Gate' };
  const records = smallRecords({
    stations: [elkPoint, pine],
    inspections: [...inspections, other],
    station_days: [evening],
  });
  const found = ask(staffedHours, openBook(records, smallSum('2025-06-04T00:00Z')));
  expect(cells(found, 'craft').reduce((sum, [craft]) => sum + Number(craft), 0)).toBe(3);
});
