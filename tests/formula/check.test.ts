import { expect, test } from 'vitest';
import { inputValue } from '../../src/formula/input-value.js';
import type { Evaluated } from '../../src/formula/value/evaluated.js';
import { ask, environmentOf, problemsOf } from './ask.js';
import { smallBook } from './small-book.js';

const at = { file: 'season.md', line: 3, column: 9 };
const places = { value: at, unit: { ...at, column: 20 } };

function input(value: string, unit: string): Evaluated {
  const found = inputValue(value, unit, places);
  if ('problems' in found && !('kind' in found)) throw new Error(found.problems[0]!.wanted);
  return found as Evaluated;
}

const known = new Map([
  ['wage', input('23.40', 'dollars an hour')],
  ['limit', input('1.5', 'hours')],
  ['grant', input('48,000', 'dollars')],
  ['place', input('Nrth', '')],
  ['season_start', input('2025-05-01', '')],
]);
const environment = environmentOf(smallBook, known);

/** Code, offset in the formula and what was seen of each problem. */
function mistakes(text: string) {
  return problemsOf(text, environment).map(({ code, place, seen }) => [code, place.column! - 5, seen]);
}

test.each([
  ['grant + limit', [['units-differ', 6, '+']]],
  ['grant + 5', [['units-differ', 6, '+']]],
  ['sum(amount of spending) > count(inspections)', [['units-differ', 24, '>']]],
  ['sum(staff_hours of station_days) + limit', [['units-differ', 33, '+']]],
  ['mean(contact_temp_f of decontaminations) * 2', [['units-differ', 41, '*']]],
  ['sum(contact_temp_f of decontaminations)', [['units-differ', 4, 'contact_temp_f of decontaminations']]],
  ['share_within(turnaround of decontaminations, grant)', [['units-differ', 45, 'grant']]],
  ['if(1 < 2, grant, limit)', [['units-differ', 17, 'limit']]],
])('units that do not go together are told at the place: %s', (text, expected) => {
  expect(mistakes(text)).toEqual(expected);
});

test.each([
  'count(inspections where length_ft > 20)',
  'count(inspections where minutes < limit)',
  'grant * 2 + sum(amount of spending)',
  'wage * sum(staff_hours of station_days) + grant',
  'mean(contact_temp_f of decontaminations) - highest(contact_temp_f of decontaminations)',
  'share_within(turnaround of decontaminations, limit)',
  'min(limit, 2, 3)',
  'count(inspections where day between season_start and "2025-05-31")',
  'first_known(grant, 0)',
  'count(inspections where length_ft > mean(length_ft of inspections))',
])('%s is sound', (text) => {
  expect(mistakes(text)).toEqual([]);
});

test.each([
  ['count(inspektions)', 'unknown-name', 6, '`inspections`'],
  ['coun(inspections)', 'unknown-function', 0, '`count`'],
  ['count(inspections where outcom is "cleared")', 'unknown-field', 24, '`outcome`'],
  ['count(inspections where outcome is "interceptd")', 'unknown-code', 35, '`intercepted`'],
  ['grnt * 2', 'unknown-name', 0, '`grant`'],
  ['count(inspections where station is place)', 'unknown-code', 35, '`North`'],
])('a misspelt name is told with the nearest: %s', (text, code, offset, nearest) => {
  const [problem, ...more] = problemsOf(text, environment);
  expect(more).toEqual([]);
  expect([problem!.code, problem!.place.column! - 5]).toEqual([code, offset]);
  expect(problem!.remedy).toContain(nearest);
});

test.each([
  ['count(inspections where day > "2025-02-30")', 'not-a-date', 30],
  ['count(inspections where outcome is "cleared" or "refused")', 'wrong-kind', 48],
  ['count(inspections where outcome > "cleared")', 'wrong-kind', 32],
  ['count(inspections where length_ft)', 'wrong-kind', 24],
  ['count(inspections where outcome is 1)', 'wrong-kind', 35],
  ['count(decontaminations where turnaround > 60)', 'wrong-kind', 29],
  ['sum(turnaround of decontaminations)', 'wrong-kind', 4],
  ['mean(outcome of inspections)', 'wrong-kind', 5],
  ['inspections + 1', 'wrong-kind', 0],
  ['sum(inspections)', 'wrong-kind', 4],
  ['quantile(length_ft of inspections, 90)', 'out-of-range', 35],
  ['rate(1)', 'wrong-arguments', 0],
  ['length_ft of inspections', 'field-alone', 0],
  ['count()', 'no-group', 0],
  ['count(station_days here)', 'no-group', 6],
])('%s is a problem: %s', (text, code, offset) => {
  expect(mistakes(text).map(([found, place]) => [found, place])).toEqual([[code, offset]]);
});

test('all mistakes of a formula are told in one go', () => {
  const text = 'count(inspections where outcom is "x" and day > "soon") / (grant + limit) + cuont(1)';
  expect(mistakes(text).map(([code]) => code)).toEqual([
    'unknown-field',
    'not-a-date',
    'units-differ',
    'unknown-function',
  ]);
});

test('in a sheet a field alone is told how to be one value, and a key is one', () => {
  const group = { table: 'inspections', rows: Uint32Array.of(0, 1), keys: new Map([['station', 'North']]) };
  const inSheet = environmentOf(smallBook, known, group);
  expect(problemsOf('length_ft * 2', inSheet).map(({ code }) => code)).toEqual(['field-alone']);
  expect(problemsOf('if(station is "North", 1, 0)', inSheet)).toEqual([]);
  const bySeason = { ...group, keys: new Map([['season', 2025]]) };
  const [problem] = problemsOf('count(station_days here)', environmentOf(smallBook, known, bySeason));
  expect([problem!.code, problem!.place.column! - 5]).toEqual(['unknown-field', 6]);
});

test('an input that is no number of its unit is told at its cell, and an unknown unit at its own', () => {
  const wrong = inputValue('hot', 'minutes', places);
  expect('problems' in wrong && wrong.problems.map(({ code, place }) => [code, place.column])).toEqual([
    ['not-a-number', 9],
  ]);
  const unknown = inputValue('5', 'minuts', places);
  expect('problems' in unknown && unknown.problems.map(({ code, place }) => [code, place.column])).toEqual([
    ['not-a-unit', 20],
  ]);
});

test('an input in percent is the share itself', () => {
  const inPercent = environmentOf(smallBook, new Map([['overhead', input('57', 'percent')]]));
  expect(ask('overhead', inPercent)).toMatchObject({ value: 0.57, unit: '', interval: null, why: null });
});
