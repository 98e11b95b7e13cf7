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
])('%s takes %j from outside', (text, expected) => {
  expect(outerNames(read(text), tableOf)).toEqual(expected);
});

test('a field is not spoilt by a failed figure of the same name', () => {
  const failed: Evaluated = { kind: 'problem', problems: [] };
  const environment = environmentOf(smallBook, new Map([['staff_hours', failed]]));
  expect(askNumber('sum(staff_hours of station_days)', environment).value).toBe(32);
  expect(ask('staff_hours * 2', environment).kind).toBe('problem');
});
