import { expect, test } from 'vitest';
import { readChoice } from '../../../src/command/read-choice.js';
import { choiceOf, filterOffers } from '../../../src/report/choice/filter-offers.js';
import { book, table, texts } from '../../formula/small-book.js';

const stations = texts('station', ['LK-07', 'rd-1', null]);
const days = table(
  'station_days',
  'days',
  [
    { ...stations, field: { ...stations.field, labels: new Map([['LK-07', 'Lakeside']]) } },
    texts('state', ['open', 'not recorded', 'not recorded'], ['open', 'closed', 'not recorded']),
  ],
  null,
);
const offering = book([days], []);

test('a code that is called "not recorded" is that code, and a missing value is missing', () => {
  const offers = filterOffers(offering, ['state', 'station']);
  expect(offers.map(({ values }) => values.map(({ value }) => value))).toEqual([
    ['open', 'not recorded'],
    ['LK-07', 'rd-1', 'not recorded'],
  ]);
  const chosen = (field: string) => choiceOf(offers, new Map([[field, 'not recorded']])).get(field);
  expect(chosen('state')).toBe('not recorded');
  expect(chosen('station')).toBeNull();
});

test.each(['LK-07', 'lk-07', 'Lakeside', 'LAKESIDE'])('a station is chosen as %s', (text) => {
  const choice = readChoice({ only: [`station=${text}`] }, offering);
  expect('problems' in choice ? choice.problems : [...choice.only]).toEqual([['station', 'LK-07']]);
});
