import { describe, expect, test } from 'vitest';
import { reachedBy } from '../../src/formula/definitions.js';
import type { Group } from '../../src/formula/environment.js';
import { inputValue } from '../../src/formula/input-value.js';
import { describeKind } from '../../src/formula/kind.js';
import { sectionFor } from '../../src/formula/language-sections.js';
import { and, answerOf, no, not, or, truthOf, unknown, yes } from '../../src/formula/missing.js';
import { resultOf } from '../../src/formula/result-of.js';
import { sheetValue } from '../../src/formula/sheet/sheet-value.js';
import type { Evaluated } from '../../src/formula/value/evaluated.js';
import { kindOfValue } from '../../src/formula/value/kind-of-value.js';
import { saysLeftOpen } from '../../src/formula/value/left-open.js';
import { givenNumber } from '../../src/formula/value/number.js';
import { ask, askNumber, environmentOf, problemsOf, valueOfFormula } from './ask.js';
import { book, firstOfMay, smallBook, table, texts } from './small-book.js';

// What is expected can be counted on the rows of the small book, or follows from the rules of the language.

const at = { file: 'season.md', line: 3, column: 9 };

function input(value: string, unit = ''): Evaluated {
  const found = inputValue(value, unit, { value: at, unit: { ...at, column: 20 } });
  if ('problems' in found && !('kind' in found)) throw new Error(found.problems[0]!.wanted);
  return found as Evaluated;
}

const { fields } = smallBook.tables.get('inspections')!;
const group = (keys: readonly (readonly [string, string | number | null])[], rows = [0, 1]): Group => ({
  sheet: 's',
  table: 'inspections',
  rows: Uint32Array.from(rows),
  keys: new Map(keys),
});

/** A sheet of given values, a column each, over some keys. */
function sheetOf(
  keys: readonly string[],
  rows: readonly (readonly (string | number | null)[])[],
  columns: Readonly<Record<string, readonly Evaluated[]>>,
) {
  const filled = Object.entries(columns).map(
    ([name, cells]) => [name, { kind: kindOfValue(cells[0]!), cells }] as const,
  );
  return sheetValue('s', { fields: keys.map((name) => fields.get(name)!), rows }, new Map(filled));
}

const plainNumbers = (...values: readonly number[]) => values.map((value) => givenNumber(value));
const problem = {
  code: 'loop',
  severity: 'sets aside',
  place: { file: 'season.md', line: 1, column: 1, field: null },
  seen: 'a',
  wanted: 'no circle',
  remedy: 'Break it.',
} as const;

describe('a key of the row of a sheet', () => {
  test('is a value of its field’s kind, and may be missing', () => {
    const inGroup = environmentOf(
      smallBook,
      new Map(),
      group([
        ['season', 2025],
        ['day', firstOfMay],
        ['minutes', 30],
        ['craft', null],
      ]),
    );
    expect(askNumber('season + 0', inGroup).value).toBe(2025);
    expect(askNumber('minutes', inGroup)).toMatchObject({ value: 30, unit: 'minutes', why: null });
    expect(ask('day', inGroup)).toEqual({ kind: 'date', day: firstOfMay });
    expect(ask('craft', inGroup)).toEqual({ kind: 'missing', why: 'it is missing' });
    const ofNone = environmentOf(
      smallBook,
      new Map(),
      group([
        ['minutes', null],
        ['day', null],
      ]),
    );
    expect(askNumber('minutes', ofNone)).toMatchObject({
      value: null,
      unit: 'minutes',
      why: 'minutes is missing in this group',
    });
    expect(ask('day', ofNone)).toMatchObject({ kind: 'missing' });
  });

  test('gives way to an input, figure or column of the same name', () => {
    const known = new Map([['minutes', givenNumber(7)]]);
    expect(askNumber('minutes', environmentOf(smallBook, known, group([['minutes', 30]]))).value).toBe(7);
  });
});

describe('a lookup', () => {
  const sheet = sheetOf(
    ['minutes', 'day'],
    [
      [30, firstOfMay],
      [0.5, firstOfMay],
      [30, firstOfMay + 1],
      [null, null],
      [8, firstOfMay],
      [8, firstOfMay],
    ],
    {
      amount: plainNumbers(1, 2, 3, 4, 5, 6),
      word: ['a', 'b', 'c', 'd', 'e', 'f'].map((text) => ({ kind: 'text', text, accounts: [] }) as const),
      when: [1, 2, 3, 4, 5, 6].map((day) => ({ kind: 'date', day, accounts: [] }) as const),
      took: [1, 2, 3, 4, 5, 6].map((minutes) => ({ ...input(`${minutes}`, 'hours') })),
    },
  );
  const known = new Map<string, Evaluated>([
    ['s', sheet],
    ['half', input('0.5', 'hours')],
    ['thirty', input('30', 'minutes')],
    ['opening', input('2025-05-01')],
    ['gap', { ...input('1', 'hours'), value: null } as Evaluated],
    ['no_day', { kind: 'date', day: null, accounts: [] }],
    ['nothing', { ...input('1', 'minutes'), value: null } as Evaluated],
  ]);
  const environment = environmentOf(smallBook, known);

  test.each([
    ['amount of s for (30, "2025-05-01")', 1],
    ['amount of s for (0.5, "2025-05-01")', 2],
    // Half an hour is thirty minutes, which the first row is of; not the row of half a minute.
    ['amount of s for (half, opening)', 1],
    ['amount of s for (thirty, opening)', 1],
    ['amount of s for (half / 60, opening)', 2],
    ['amount of s for (thirty, opening + 1)', 3],
    // The missing group is found by a missing key, whatever its unit.
    ['amount of s for (gap, no_day)', 4],
  ])('%s finds the row of its keys, in their units', (text, value) => {
    expect(askNumber(text, environment).value).toBe(value);
  });

  test('without one row says how many there are, and keeps kind and unit', () => {
    const none = 'the sheet s has no row for 31, 20209';
    expect(askNumber('took of s for (31, opening)', environment)).toMatchObject({
      value: null,
      unit: 'hours',
      why: none,
    });
    expect(ask('word of s for (31, opening)', environment)).toEqual({ kind: 'missing', why: none });
    expect(ask('when of s for (31, opening)', environment)).toEqual({ kind: 'missing', why: none });
    expect(valueOfFormula('when of s for (31, opening)', environment)).toMatchObject({ kind: 'date', day: null });
    expect(askNumber('amount of s for (8, opening)', environment).why).toBe('the sheet s has 2 rows for 8, 20209');
    expect(askNumber('amount of s for (nothing, opening)', environment).why).toBe(
      'the sheet s has no row for a missing key, 20209',
    );
  });
});

describe('what comes from records and decides which rows are counted', () => {
  const columns = (formula: string) =>
    ['North', 'South', 'East'].map((station, row) =>
      valueOfFormula(
        formula,
        environmentOf(smallBook, new Map(), group([['station', station]], [[0, 1, 2, 3], [4, 5, 6, 7], []][row])),
      ),
    );
  const byStation = sheetOf(['station'], [['North'], ['South'], ['East']], {
    inspected: columns('count()'),
    typical: columns('mean(length_ft)'),
    fixed: plainNumbers(1, 2, 0),
    label: columns('lower_case(station)'),
  });
  const known = new Map<string, Evaluated>([['s', byStation]]);
  const environment = environmentOf(smallBook, known);
  const why = 'typical decides which rows of s are taken, and they cannot be drawn again with it here';

  test('leaves a date a date and a text a text', () => {
    const above = 'inspections where length_ft > mean(length_ft of inspections)';
    expect(ask(`latest(day of ${above})`)).toEqual({ kind: 'date', day: firstOfMay + 1 });
    expect(ask(`listed(station of ${above})`)).toEqual({ kind: 'text', text: 'North, South' });
  });

  test('takes the interval from a number of a sheet’s rows, and says so', () => {
    expect(askNumber('mean(typical of s)', environment).why).not.toBe(why);
    const found = askNumber('mean(typical of s where typical > 22)', environment);
    expect(found).toMatchObject({ value: 32.5, interval: null, why });
    expect(found.cautions).toContain('typical decides which rows of s are taken, and is taken as known');
    expect(askNumber('mean(typical of s where not (typical * fixed < 22))', environment).why).toBe(why);
    expect(askNumber('mean(typical of s where fixed > 1)', environment).why).not.toBe(why);
    expect(askNumber('mean(typical of s where inspected > 3)', environment).why).not.toBe(why);
    expect(askNumber('mean(typical of s where label is not "east")', environment).why).not.toContain('label');
    expect(askNumber('count(s where typical > 22 or typical > 40)', environment).cautions).toEqual([
      'typical decides which rows of s are taken, and is taken as known',
    ]);
  });

  test('a column of the sheet itself knows its own row', () => {
    const inRow = (station: string) => environmentOf(smallBook, known, group([['station', station]]));
    expect(askNumber('rank_from_highest(fixed of s)', inRow('North')).value).toBe(2);
    expect(askNumber('rank_from_highest(fixed of s)', inRow('South')).value).toBe(1);
    expect(askNumber('running_sum(fixed of s)', inRow('South')).value).toBe(3);
  });
});

test('an answer is yes, no or unknown, and they go together as in Kleene’s strong logic', () => {
  // Kleene (1952), Introduction to Metamathematics, section 64: the tables of not, and, or.
  const all = [no, yes, unknown];
  expect([answerOf(false), answerOf(true), answerOf(null)]).toEqual(all);
  expect(all.map(truthOf)).toEqual([false, true, null]);
  expect(all.map(not)).toEqual([yes, no, unknown]);
  expect(all.map((one) => all.map((other) => and(one, other)))).toEqual([
    [no, no, no],
    [no, yes, unknown],
    [no, unknown, unknown],
  ]);
  expect(all.map((one) => all.map((other) => or(one, other)))).toEqual([
    [no, yes, unknown],
    [yes, yes, yes],
    [unknown, yes, unknown],
  ]);
  const gone = environmentOf(smallBook, new Map([['gone', givenNumber(null, [], 'not known')]]));
  // Where no row knows the answer there is no count.
  for (const text of ['gone > 2', 'not gone > 2']) {
    expect(askNumber(`count(inspections where ${text})`, gone).value).toBeNull();
  }
  expect(askNumber('count(inspections where gone > 2 or station is "North")', gone).value).toBe(4);
});

describe('what rests on something that failed', () => {
  const failed: Evaluated = { kind: 'problem', problems: [problem] };
  const sheet = sheetOf(['station'], [['North']], { amount: plainNumbers(1) });
  const known = new Map<string, Evaluated>([
    ['spent', failed],
    ['minutes', failed],
    ['amount', failed],
    ['day', failed],
    ['station', failed],
    ['length_ft', failed],
    ['full', { ...valueOfFormula('inspections where extent is "full"') }],
    ['s', sheet],
  ]);
  const environment = environmentOf(smallBook, known);
  const kindOf = (text: string, where = environment) => ask(text, where).kind;

  test('fails with its problems, but a field or column of its name does not', () => {
    expect(kindOf('sum(minutes of inspections)')).toBe('number');
    expect(kindOf('sum(minutes of full)')).toBe('number');
    expect(kindOf('count(inspections where minutes > 3)')).toBe('number');
    expect(kindOf('sum(amount of s)')).toBe('number');
    expect(kindOf('count(inspections where year_of(day) is 2025)')).toBe('number');
    expect(kindOf('count(inspections where lower_case(station) is "north")')).toBe('number');
    expect(kindOf('sum(if(outcome is "refused", length_ft, 0) of inspections)')).toBe('number');
    expect(kindOf('count(inspections where max(length_ft, 30) > 30)')).toBe('number');
    expect(kindOf('year_of(day)')).toBe('problem');
    expect(kindOf('sum(minutes)', environmentOf(smallBook, known, group([['station', 'North']])))).toBe('number');
    expect(kindOf('minutes + 1')).toBe('problem');
    expect(kindOf('count(station_days where staff_hours > spent)')).toBe('problem');
    expect(kindOf('amount of s for "North"')).toBe('number');
  });
});

test('what stands on an input comes behind what it needs, and a loop reaches nothing', () => {
  const made = (needs: Readonly<Record<string, readonly string[]>>) => ({
    inputs: new Set(['i', 'j']),
    made: new Map(Object.entries(needs).map(([name, needed]) => [name, { formula: null, needs: needed }])),
    values: new Map(),
  });
  const chain = made({ top: ['middle', 'side', 'i'], middle: ['i'], side: ['j'], apart: ['i'] });
  expect(reachedBy(new Set(['i']), 'top', chain)).toEqual(['middle', 'top']);
  expect(reachedBy(new Set(['j']), 'top', chain)).toEqual(['side', 'top']);
  expect(reachedBy(new Set(['i', 'j']), 'top', chain)).toEqual(['middle', 'side', 'top']);
  expect(reachedBy(new Set(['i']), 'side', chain)).toEqual([]);
  expect(reachedBy(new Set(['i']), 'unmade', chain)).toEqual([]);
  // Needed twice: it is behind all of what needs it.
  expect(reachedBy(new Set(['i']), 'a', made({ a: ['b', 'c'], b: ['c'], c: ['i'] }))).toEqual(['c', 'b', 'a']);
  expect(reachedBy(new Set(['i']), 'a', made({ a: ['b'], b: ['a'] }))).toEqual([]);
});

test('a value as a notebook shows it', () => {
  const text = (one: string | null) => ({ kind: 'text', text: one, accounts: [] }) as const;
  const date = (day: number | null) => ({ kind: 'date', day, accounts: [] }) as const;
  expect(resultOf(text('a'))).toEqual({ kind: 'text', text: 'a' });
  expect(resultOf({ ...text(null), why: 'gone' })).toEqual({ kind: 'missing', why: 'gone' });
  expect(resultOf(date(3))).toEqual({ kind: 'date', day: 3 });
  expect(resultOf(date(null))).toEqual({ kind: 'missing', why: 'it is missing' });
  expect(ask('1 < 2')).toEqual({ kind: 'truth', truth: true });
  const gone = new Map<string, Evaluated>([['gone', givenNumber(null, [], null)]]);
  expect(ask('gone > 2', environmentOf(smallBook, gone))).toEqual({
    kind: 'missing',
    why: 'a value that it compares is missing',
  });
  expect(askNumber('gone', environmentOf(smallBook, gone))).toMatchObject({ value: null, why: 'it is missing' });
  expect(ask('3')).toMatchObject({ kind: 'number', value: 3, given: true, cautions: [] });
  expect(ask('count(inspections)')).not.toHaveProperty('given');
  expect(ask('inspections where length_ft > 20')).toEqual({
    kind: 'number',
    value: 3,
    unit: 'inspections',
    numerator: null,
    denominator: null,
    interval: null,
    why: null,
    cautions: [],
  });
  expect(resultOf({ kind: 'list', items: [text('a'), text(null)], accounts: [] })).toEqual({
    kind: 'text',
    text: 'a, missing',
  });
  expect(resultOf({ kind: 'list', items: plainNumbers(1, 2.5), accounts: [] })).toEqual({
    kind: 'text',
    text: '1, 2.5',
  });
  expect(resultOf({ kind: 'list', items: [date(firstOfMay), date(null)], accounts: [] })).toEqual({
    kind: 'text',
    text: '2025-05-01, missing',
  });
  expect(resultOf(sheetOf(['station'], [], { amount: plainNumbers(1) }))).toEqual({
    kind: 'text',
    text: 'the sheet s',
  });
  expect(resultOf({ kind: 'problem', problems: [problem] })).toEqual({ kind: 'problem', problems: [problem] });
});

test('a count says where far more rows are left open than are counted: more than ten for each', () => {
  const cautions = (open: number) => {
    const water = texts('water', ['yes', ...Array(open).fill(null)], ['yes', 'no']);
    return askNumber(
      'count(looks where water is "yes")',
      environmentOf(book([table('looks', 'looks', [water], null)], [])),
    ).cautions.filter(saysLeftOpen);
  };
  expect(cautions(10)).toEqual([]);
  expect(cautions(11)).toEqual([
    'far more rows are left open than are counted: what a condition asks for is missing in them',
  ]);
});

test('a kind is a phrase', () => {
  const told = (text: string) => describeKind(kindOfValue(valueOfFormula(text)));
  expect(['3', '"a"', '1 < 2', 'inspections', 'mean(length_ft of inspections)'].map(told)).toEqual([
    'a plain number',
    'a text',
    'true or false',
    'rows of inspections',
    'a number in feet',
  ]);
  expect((['date', 'instant', 'wait', 'unknown'] as const).map((kind) => describeKind({ kind }))).toEqual([
    'a date',
    'a moment',
    'a wait',
    'something not known',
  ]);
});

test('a problem leads to the section of the language that helps, unless it is one of a table or of a whole file', () => {
  expect(sectionFor(problem)?.id).toBe('names');
  expect(sectionFor({ ...problem, code: 'units-differ' })?.id).toBe('units');
  expect(sectionFor({ ...problem, code: 'no-such-code' })).toBeNull();
  expect(sectionFor({ ...problem, place: { ...problem.place, field: 'Day' } })).toBeNull();
  expect(sectionFor({ ...problem, place: { ...problem.place, line: 0 } })).toBeNull();
  expect(sectionFor({ ...problem, place: { ...problem.place, file: 'season.md.csv' } })).toBeNull();
  expect(sectionFor({ ...problem, place: { ...problem.place, file: 'SEASON.MD' } })?.id).toBe('names');
  expect(problemsOf('grnt').map((one) => sectionFor(one)?.id)).toEqual(['names']);
});
