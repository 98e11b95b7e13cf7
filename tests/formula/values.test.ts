import { expect, test } from 'vitest';
import { inputValue } from '../../src/formula/input-value.js';
import type { Evaluated } from '../../src/formula/value/evaluated.js';
import { ask, askNumber, environmentOf, problemsOf } from './ask.js';
import { book, dates, numbers, smallBook, table, texts } from './small-book.js';

const at = { file: 'season.md', line: 3, column: 9 };

function input(value: string, unit = ''): Evaluated {
  const found = inputValue(value, unit, { value: at, unit: { ...at, column: 40 } }, ['inspections']);
  if (!('kind' in found)) throw new Error(found.problems[0]!.wanted);
  return found;
}

const known = new Map([
  ['opening', input('2025-05-01')],
  ['closing', input('2025-09-30')],
  ['early', input('March, April', 'list')],
  ['watched', input('North, East', 'list')],
  ['lengths', input('10, 20', 'list of feet')],
  ['week', input('1', 'weeks')],
  ['target', input('90', 'minutes')],
]);
const environment = environmentOf(smallBook, known);

// Days between dates, weekdays and months: `date -u -d`, GNU coreutils.
test.each([
  ['closing - opening', { kind: 'number', value: 152, unit: 'days' }],
  ['days_between("2024-02-28", "2024-03-01")', { kind: 'number', value: 2, unit: 'days' }],
  ['days_between(closing, opening)', { kind: 'number', value: -152 }],
  ['opening + 31', { kind: 'date', day: 20240 }],
  ['opening + week', { kind: 'date', day: 20216 }],
  ['week + opening', { kind: 'date', day: 20216 }],
  ['opening - 1', { kind: 'date', day: 20208 }],
  ['year_of(opening)', { kind: 'number', value: 2025, unit: '' }],
  ['month_of(opening)', { kind: 'text', text: 'May' }],
  ['weekday_of("2025-05-01")', { kind: 'text', text: 'Thursday' }],
  ['day_of_month(closing)', { kind: 'number', value: 30 }],
  ['date_of(2024, 2, 29) - opening', { kind: 'number', value: -427 }],
  ['earliest(day of inspections)', { kind: 'date', day: 20209 }],
  ['latest(day of inspections) - earliest(day of inspections)', { kind: 'number', value: 1, unit: 'days' }],
  ['if(closing > opening, closing, opening)', { kind: 'date', day: 20361 }],
  ['first_known(date_of(2025, 2, 30), opening)', { kind: 'date', day: 20209 }],
  ['joined(upper_case("may"), " ", lower_case("ÄRA"))', { kind: 'text', text: 'MAY ära' }],
  ['if(count(inspections) > 7, "many", "few")', { kind: 'text', text: 'many' }],
  ['first_known(if(1 / 0 > 1, "a", "b"), "unknown")', { kind: 'text', text: 'unknown' }],
  ['if(contains("Heron Point", "Po") and not starts_with("Heron", "he"), 1, 0)', { kind: 'number', value: 1 }],
  ['listed(station of inspections)', { kind: 'text', text: 'North, South' }],
  ['month_of(opening) in early', { kind: 'truth', truth: false }],
])('%s', (text, expected) => {
  expect(ask(text, environment)).toMatchObject(expected);
});

test.each([
  ['date_of(2025, 2, 30)', 'there is no such value'],
  ['date_of(2025, 2, 1 / 0)', 'a value that it is made of is missing'],
  ['opening + 99999999', 'there is no such value'],
  ['joined("a", if(1 / 0 > 1, "b", "c"))', 'a value that it is made of is missing'],
  ['listed(craft of inspections where season is 1999)', 'no row has the field'],
])('%s is missing because %s', (text, why) => {
  expect(ask(text, environment)).toEqual({ kind: 'missing', why });
});

test.each([
  ['count(inspections where station in watched)', 4],
  ['count(inspections where station not in watched)', 4],
  ['count(inspections where station in (watched, "South"))', 8],
  ['count(inspections where length_ft in lengths)', 4],
  ['count(inspections where month_of(day) is "May")', 7],
  ['count(inspections where weekday_of(day) is "Friday")', 3],
  ['count(inspections where day + 1 > opening + week - 6)', 3],
  ['count(inspections where closing - day < 152)', 3],
  ['count(inspections where year_of(day) is season)', 3],
  ['count(inspections where starts_with(station, "No"))', 4],
  ['count(inspections where not contains(craft, "a"))', 5],
  ['count(inspections where if(outcome is "cleared", "ok", "other") is "other")', 3],
  ['count(inspections where first_known(standing_water, "not asked") is "not asked")', 2],
  ['count(inspections where joined(craft, "!") is "a!")', 2],
  ['count(inspections where joined(standing_water, "x") is missing)', 2],
  ['count(inspections where first_known(day, opening + 1) is opening + 1)', 4],
  ['mean((day - opening) of inspections)', 3 / 7],
])('row by row %s is %d', (text, value) => {
  expect(askNumber(text, environment).value).toBeCloseTo(value, 12);
});

test('moments subtracted are minutes, and a moment moved by a time stays one', () => {
  const started = { ...dates('started', [0, 60_000 * 90, null]), field: instantField('started') };
  const ended = { ...dates('ended', [60_000 * 30, 60_000 * 120, 60_000]), field: instantField('ended') };
  const filled = [texts('station', ['a', 'a', 'a']), numbers('season', null, [1, 1, 1]), started, ended];
  const moments = environmentOf(book([table('washes', 'washes', filled, [0, 0, 0])], [0]), known);
  expect(askNumber('mean((ended - started) of washes)', moments)).toMatchObject({ value: 30, unit: 'minutes' });
  expect(askNumber('count(washes where started + target > ended)', moments).value).toBe(2);
});

function instantField(name: string) {
  return { ...dates(name, []).field, kind: 'instant' as const };
}

test.each([
  ['opening + target * target', 'units-differ'],
  ['opening * 2', 'wrong-kind'],
  ['opening + closing', 'wrong-kind'],
  ['5 - opening', 'wrong-kind'],
  ['year_of("2025-02-30")', 'not-a-date'],
  ['year_of(2025)', 'wrong-kind'],
  ['lower_case(3)', 'wrong-kind'],
  ['if(1 < 2, "a", 3)', 'wrong-kind'],
  ['first_known(opening, "x")', 'wrong-kind'],
  ['count(inspections where station is watched)', 'wrong-kind'],
  ['watched + 1', 'wrong-kind'],
  ['watched is "North"', 'wrong-kind'],
  ['watched is missing', 'wrong-kind'],
  ['station in watched', 'unknown-name'],
  ['count(inspections where length_ft in watched)', 'wrong-kind'],
  ['count(inspections where month_of(day) is "Mai")', 'unknown-code'],
  ['listed(length_ft of inspections)', 'wrong-kind'],
])('%s is told as %s, once', (text, code) => {
  expect(problemsOf(text, environment).map((problem) => problem.code)).toEqual([code]);
});

test('a list must hold values of one kind, each told at its own place', () => {
  const places = { value: at, unit: { ...at, column: 40 } };
  const mixed = inputValue('March, 4', 'list', places);
  expect('problems' in mixed && mixed.problems[0]).toMatchObject({ code: 'wrong-kind', place: { column: 9 + 7 } });
  const gap = inputValue('March,, May', 'list', places);
  expect('problems' in gap && gap.problems[0]).toMatchObject({ code: 'no-value', place: { column: 9 + 6 } });
});

test('a number made of a text that was chosen by an estimate has no interval, and says why', () => {
  const text = 'if(if(mean(length_ft of inspections) > 20, "long", "short") is "long", 1, 0)';
  expect(askNumber(text, environment)).toMatchObject({ value: 1, interval: null });
  expect(askNumber(text, environment).why).toMatch(/a text or date stands between/);
});
