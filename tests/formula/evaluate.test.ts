import { expect, test } from 'vitest';
import type { Environment, Group } from '../../src/formula/environment.js';
import { groupRows } from '../../src/formula/rows/group-rows.js';
import { accountOf, type Evaluated } from '../../src/formula/value/evaluated.js';
import { ask, askNumber, environmentOf, valueOfFormula } from './ask.js';
import { smallBook } from './small-book.js';

function rowsOf(text: string, environment: Environment): readonly number[] {
  const value = valueOfFormula(text, environment);
  return value.kind === 'rows' ? [...value.counted.rows] : [];
}

// Every expected number in this file can be counted on the rows of the small book.

const north: Group = {
  table: 'inspections',
  rows: Uint32Array.of(0, 1, 2),
  keys: new Map([['station', 'North']]),
};

test.each([
  ['count(inspections)', 8, 'inspections'],
  ['count(inspections where outcome is "intercepted")', 2, 'inspections'],
  ['count(inspections where outcome is not "cleared" and season is 2024)', 3, 'inspections'],
  ['count(inspections where station in ("North", "East"))', 4, 'inspections'],
  ['count(inspections where station not in ("North"))', 4, 'inspections'],
  ['count(inspections where length_ft between 20 and 40)', 5, 'inspections'],
  ['count(inspections where length_ft not between 20 and 40)', 2, 'inspections'],
  ['count(inspections where day is "2025-05-02")', 3, 'inspections'],
  ['count(inspections where day < "2025-05-02")', 4, 'inspections'],
  ['count(inspections where minutes * 60 >= 1800)', 2, 'inspections'],
  ['count(inspections where max(length_ft, minutes * 0 + length_ft) > 35)', 2, null],
  ['sum(staff_hours of station_days)', 32, 'staff hours'],
  ['sum(staff_cost of station_days) / sum(staff_hours of station_days)', 25, 'dollars a staff hour'],
  ['sum(amount of spending where category is "personnel")', 950, 'dollars'],
  ['mean(length_ft of inspections where station is "North")', 20, 'feet'],
  ['median(length_ft of inspections)', 20, 'feet'],
  ['lowest(length_ft of inspections)', 10, 'feet'],
  ['highest(minutes of inspections)', 45, 'minutes'],
  ['distinct(craft of inspections)', 5, ''],
  ['distinct(season of inspections)', 2, ''],
  ['rate(count(inspections where outcome is "intercepted"), count(inspections))', 0.25, ''],
  ['count(decontaminations) / count(inspections)', 0.625, 'washes an inspection'],
  ['-count(inspections)', -8, 'inspections'],
  ['abs(sum(amount of spending) - sum(staff_cost of station_days) * 2)', 400, 'dollars'],
  ['if(count(inspections) > 5, 1, 2)', 1, ''],
  ['min(3, 2, 4)', 2, ''],
])('%s is %d %s', (text, value, unit) => {
  if (unit === null) {
    // A length and a time have no larger one.
    expect(() => askNumber(text)).toThrow('units-differ');
    return;
  }
  expect(askNumber(text)).toMatchObject({ value, unit });
});

test('in a condition a comparison with missing is unknown, and not turns it into no match either', () => {
  expect(askNumber('count(inspections where standing_water is "yes")').value).toBe(2);
  expect(askNumber('count(inspections where not standing_water is "yes")').value).toBe(4);
  expect(askNumber('count(inspections where standing_water is not "yes")').value).toBe(4);
  expect(askNumber('count(inspections where standing_water is missing)').value).toBe(2);
  expect(askNumber('count(inspections where standing_water is not missing)').value).toBe(6);
});

test('the other side settles what is unknown: three-valued logic of Kleene (1952)', () => {
  // Rows 2 and 5 have no standing water recorded; their stations are North and South.
  expect(askNumber('count(inspections where standing_water is "yes" or station is "North")').value).toBe(5);
  expect(askNumber('count(inspections where standing_water is "yes" and station is "North")').value).toBe(1);
  expect(askNumber('count(inspections where not (standing_water is "yes" and station is "South"))').value).toBe(6);
});

test('arithmetic with a missing operand is missing and says why', () => {
  const missing = askNumber(
    'mean(staff_hours of station_days where state is "closed") + sum(staff_hours of station_days)',
  );
  expect(missing).toMatchObject({ value: null, why: 'no row has the field', interval: null });
  expect(askNumber('count(inspections) / count(inspections where season is 1999)')).toMatchObject({
    value: null,
    why: 'it would be divided by zero',
  });
  expect(askNumber('first_known(1 / 0, 7)').value).toBe(7);
  expect(askNumber('if(1 / 0 > 2, 1, 2)').value).toBeNull();
  expect(ask('1 / 0 > 2').kind).toBe('missing');
});

test('a selection builds on a selection, and its rows count', () => {
  const full = valueOfFormula('inspections where extent is "full"');
  const early = valueOfFormula('full where season is 2024', environmentOf(smallBook, new Map([['full', full]])));
  const known = new Map<string, Evaluated>([
    ['full', full],
    ['early', early],
  ]);
  const environment = environmentOf(smallBook, known);
  expect(rowsOf('early where station is "South"', environment)).toEqual([4, 5]);
  expect(askNumber('count(early)', environment).value).toBe(4);
  expect(askNumber('rate(count(early where outcome is "intercepted"), count(full))', environment)).toMatchObject({
    numerator: 2,
    denominator: 7,
  });
});

test('a sum over rows of which none has the field is missing, and one over no rows is 0', () => {
  const environment = environmentOf(smallBook);
  // One row of the small book has no length, and none is of 1999.
  expect(askNumber('sum(length_ft of inspections where length_ft is missing)', environment)).toMatchObject({
    value: null,
    why: 'no row has the field',
  });
  expect(askNumber('sum(length_ft of inspections where season is 1999)', environment).value).toBe(0);
});

test('in a sheet rows left out are the group’s, and a table means all its rows unless it says here', () => {
  const environment = environmentOf(smallBook, new Map(), north);
  expect(askNumber('count()', environment).value).toBe(3);
  expect(askNumber('count(where outcome is "intercepted")', environment).value).toBe(1);
  expect(askNumber('sum(length_ft)', environment).value).toBe(60);
  expect(askNumber('sum(length_ft where season is 2024)', environment).value).toBe(30);
  expect(askNumber('count(inspections)', environment).value).toBe(8);
  expect(askNumber('count(inspections here)', environment).value).toBe(4);
  expect(askNumber('sum(staff_hours of station_days here)', environment).value).toBe(24);
  expect(askNumber('count(station_days here where state is "open")', environment).value).toBe(2);
  expect(ask('station', environment)).toEqual({ kind: 'text', text: 'North' });
});

test('groups stand in the order of the code list, missing last', () => {
  const inspections = smallBook.tables.get('inspections')!;
  const all = Uint32Array.from(rowsOf('inspections', environmentOf()));
  const keys = (fields: readonly string[]) => groupRows(inspections, all, fields).map(({ key }) => key);
  expect(keys(['station'])).toEqual([['South'], ['North']]);
  expect(keys(['standing_water', 'season'])).toEqual([
    ['yes', 2024],
    ['no', 2024],
    ['no', 2025],
    [null, 2024],
    [null, 2025],
  ]);
});

test('an account tells what was counted, left out as unknown and skipped as missing', () => {
  const [account, ...more] = accountOf(valueOfFormula('mean(length_ft of inspections where standing_water is "no")'));
  expect(more).toEqual([]);
  expect(account).toEqual({
    table: 'inspections',
    description: 'inspections where standing_water is "no"',
    rows: Uint32Array.of(1, 6, 7),
    considered: 8,
    unknown: 2,
    skippedMissing: 1,
  });
});

test('what rests on something that failed gives its problems and computes nothing', () => {
  const problem = {
    code: 'loop',
    severity: 'sets aside',
    place: { file: 'season.md', line: 1, column: 1, field: null },
    seen: 'a',
    wanted: 'no circle',
    remedy: 'Break it.',
  } as const;
  const known = new Map<string, Evaluated>([['spent', { kind: 'problem', problems: [problem] }]]);
  expect(ask('spent / 2', environmentOf(smallBook, known))).toEqual({ kind: 'problem', problems: [problem] });
});
