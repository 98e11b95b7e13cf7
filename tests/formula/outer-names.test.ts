import { expect, test } from 'vitest';
import { outerNames } from '../../src/formula/outer-names.js';
import type { Evaluated } from '../../src/formula/value/evaluated.js';
import { ask, askNumber, environmentOf, read } from './ask.js';
import { smallBook } from './small-book.js';

const { tables } = smallBook;
const tableOf = (base: string | null) => tables.get(base === 'full' ? 'inspections' : (base ?? 'inspections')) ?? null;

test.each([
  ['sum(staff_hours of station_days where state is "open")', ['station_days']],
  ['staff_hours / count(inspections where length_ft > limit)', ['staff_hours', 'inspections', 'limit']],
  ['sum(length_ft where minutes > usual)', ['usual']],
  ['mean(if(length_ft > limit, length_ft, 0) of full)', ['full', 'limit']],
  ['rate(intercepted, count())', ['intercepted']],
  ['count(inspections where length_ft > mean(minutes of station_days))', ['inspections', 'station_days', 'minutes']],
  ['full where season is this_season', ['full', 'this_season']],
  ['minutes where length_ft > 3', ['minutes', 'length_ft']],
  ['sum(station_days where staff_hours > 3)', ['station_days']],
  ['count(limit + 1)', ['limit']],
  ['running_sum(amount of by_day, station, day)', ['by_day', 'amount']],
  ['rate(minutes, count())', ['minutes']],
  ['if(minutes > 3, length_ft, 2)', ['minutes', 'length_ft']],
  [
    'count(inspections where length_ft > quantile(staff_hours of station_days, minutes))',
    ['inspections', 'station_days', 'minutes'],
  ],
  ['count(station_days where joined(state, station, minutes) is "a")', ['station_days', 'minutes']],
  ['count(full where year_of(day) is year_of(since))', ['full', 'since']],
])('%s takes %j from outside', (text, expected) => {
  expect(outerNames(read(text), tableOf)).toEqual(expected);
});

test('a sheet stands for rows only where it is named as such', () => {
  const isSheet = (name: string) => name === 'length_ft';
  const withSheet = (base: string | null) => (base === 'length_ft' ? tables.get('station_days')! : tableOf(base));
  expect(outerNames(read('sum(length_ft where minutes > 3)'), withSheet, isSheet)).toEqual([]);
  expect(outerNames(read('sum(staff_hours of length_ft where minutes > 3)'), withSheet, isSheet)).toEqual([
    'length_ft',
    'minutes',
  ]);
});

test('a field is no name from outside, whatever function it is given to, and whether there is a group or none', () => {
  const noGroup = (base: string | null) => (base === null ? null : tableOf(base));
  for (const condition of [
    'year_of(day) is 2025',
    'lower_case(station) is "north"',
    'if(length_ft > 3, minutes, 0) > 2',
  ]) {
    expect(outerNames(read(`count(inspections where ${condition})`), noGroup)).toEqual(['inspections']);
  }
});

test('a field is not spoilt by a failed figure of the same name', () => {
  const failed: Evaluated = { kind: 'problem', problems: [] };
  const environment = environmentOf(smallBook, new Map([['staff_hours', failed]]));
  expect(askNumber('sum(staff_hours of station_days)', environment).value).toBe(32);
  expect(ask('staff_hours * 2', environment).kind).toBe('problem');
});
