import { describe, expect, test } from 'vitest';
import type { Group } from '../../src/formula/environment.js';
import { inputValue } from '../../src/formula/input-value.js';
import { sheetValue } from '../../src/formula/sheet/sheet-value.js';
import { accountOf, type Evaluated } from '../../src/formula/value/evaluated.js';
import { kindOfValue } from '../../src/formula/value/kind-of-value.js';
import { saysTakenAsKnown } from '../../src/formula/value/taken-as-known.js';
import { numberColumn } from '../../src/record/column.js';
import { ask, askNumber, environmentOf, problemsOf, valueOfFormula } from './ask.js';
import { book, dates, type FilledField, numbers, smallBook, table, texts, waits } from './small-book.js';

const at = { file: 'season.md', line: 3, column: 9 };

function input(value: string, unit = ''): Evaluated {
  const found = inputValue(value, unit, { value: at, unit: { ...at, column: 40 } });
  if (!('kind' in found)) throw new Error(found.problems[0]!.wanted);
  return found;
}

const known = new Map<string, Evaluated>([
  ['warm', input('60', 'degrees C')],
  ['reach', input('6.096', 'metres')],
  ['opening', input('2025-05-01')],
  ['nowhere', { kind: 'text', text: null, accounts: [] }],
  ['sizes', input('10, 20', 'list of feet')],
  ['half', input('30', 'minutes')],
  ['halves', input('30, 8', 'list of minutes')],
  ['days', input('2025-05-01, 2025-05-09', 'list')],
]);
const environment = environmentOf(smallBook, known);
const counted = (condition: string, rows = 'inspections') =>
  askNumber(`count(${rows} where ${condition})`, environment).value;
const unclear = (condition: string, rows = 'inspections') =>
  accountOf(valueOfFormula(`count(${rows} where ${condition})`, environment)).map(({ unknown }) => unknown);

// Every number can be counted on the rows of the small book: lengths 10, 20, 30, missing, 20, 20, 40, 50; minutes 4, 30, 6,
// 2, 45, missing, 8, 5; temperatures 140, 141, missing, 130, 150 °F.
describe('a condition of rows', () => {
  test.each([
    // 60 °C is 140 °F, 6.096 m are 20 feet: NIST SP 811, B.8.
    ['contact_temp_f > warm', 2, 'decontaminations'],
    ['contact_temp_f >= warm', 3, 'decontaminations'],
    ['contact_temp_f < warm', 1, 'decontaminations'],
    ['warm >= contact_temp_f', 2, 'decontaminations'],
    ['length_ft is reach', 3, 'inspections'],
    ['length_ft is not reach', 4, 'inspections'],
    ['length_ft between reach and 40', 5, 'inspections'],
    ['length_ft between 40 and reach', 0, 'inspections'],
    ['length_ft not between 40 and reach', 7, 'inspections'],
    ['length_ft in (10, 50, 60)', 2, 'inspections'],
    ['length_ft not in (10, 50, 60)', 5, 'inspections'],
    ['length_ft in sizes', 4, 'inspections'],
    ['minutes in halves', 2, 'inspections'],
    ['minutes not in halves', 5, 'inspections'],
    ['minutes in (half, 8)', 2, 'inspections'],
    ['day in days', 4, 'inspections'],
    ['day in ("2025-05-02", "2025-05-03")', 3, 'inspections'],
    ['day not in days', 3, 'inspections'],
    ['day is opening', 4, 'inspections'],
    ['opening < day', 3, 'inspections'],
    ['"2025-05-02" > day', 4, 'inspections'],
    ['"North" is station', 4, 'inspections'],
    ['station is not "North"', 4, 'inspections'],
    ['craft is inspector', 0, 'inspections'],
    ['craft is not inspector', 7, 'inspections'],
    ['lower_case(station) is "north"', 4, 'inspections'],
    ['minutes < length_ft * 0 + 0 * minutes', 0, null],
    ['1 < 2', 8, 'inspections'],
    ['2 < 1', 0, 'inspections'],
    ['"a" is "a"', 8, 'inspections'],
    ['"a" is "b"', 0, 'inspections'],
    ['"a" is not "b"', 8, 'inspections'],
    ['"a" is not "a"', 0, 'inspections'],
    ['opening is opening', 8, 'inspections'],
    ['half is missing', 0, 'inspections'],
    ['half is not missing', 8, 'inspections'],
    ['nowhere is missing', 8, 'inspections'],
    ['nowhere is not missing', 0, 'inspections'],
    ['turnaround is missing', 1, 'decontaminations'],
    ['turnaround is not missing', 4, 'decontaminations'],
    ['day is missing', 1, 'inspections'],
    ['craft is missing', 1, 'inspections'],
    ['length_ft * 2 is missing', 1, 'inspections'],
    ['not (length_ft > 15)', 1, 'inspections'],
    ['not (length_ft > 15 and minutes > 20)', 5, 'inspections'],
    ['length_ft > 15 or minutes > 20', 6, 'inspections'],
    ['not contains(craft, "a") or length_ft is missing', 5, 'inspections'],
    ['starts_with(craft, "a") and not contains(craft, "b")', 2, 'inspections'],
  ] as const)('%s holds for %d', (condition, rows, of) => {
    if (of === null) expect(problemsOf(`count(inspections where ${condition})`, environment)).not.toEqual([]);
    else expect(counted(condition, of)).toBe(rows);
  });

  test('that meets what is missing is unclear, and that is counted', () => {
    expect(unclear('length_ft > 15')).toEqual([1]);
    expect(unclear('length_ft not between 10 and 20')).toEqual([1]);
    expect(unclear('length_ft in (10, 20)')).toEqual([1]);
    expect(unclear('station is nowhere')).toEqual([8]);
    expect(unclear('station is not nowhere')).toEqual([8]);
    expect(unclear('nowhere is "North"')).toEqual([8]);
    expect(unclear('craft is inspector')).toEqual([1]);
    expect(unclear('contains(craft, "a")')).toEqual([1]);
    expect(unclear('not contains(craft, "a")')).toEqual([1]);
    expect(unclear('length_ft is missing')).toEqual([0]);
    // One row lacks a length and took 2 minutes, another lacks minutes and is 20 feet long: what one side settles is clear.
    expect(unclear('length_ft > 15 and minutes > 1')).toEqual([2]);
    expect(unclear('length_ft > 15 and minutes > 20')).toEqual([1]);
    expect(unclear('length_ft > 25 and minutes > 20')).toEqual([0]);
    expect(unclear('length_ft > 15 or minutes > 20')).toEqual([1]);
  });

  test('asked twice, or turned round, finds the same rows again', () => {
    const text = 'contains(craft, "a") and not standing_water is "no"';
    const found = [counted(text), counted(`not (${text})`), counted(text)];
    expect(found).toEqual([1, 5, 1]);
    expect(counted('standing_water is "no"')).toBe(4);
  });
});

test('a conversion’s own rounding decides no comparison, whichever side it stands on', () => {
  // 4.1 × 60 is 245.99999999999997 in floating point, 8.3 × 60 is 498.00000000000006, and (140 − 32) / 1.8 not quite 60.
  const names = new Map<string, Evaluated>([
    ...known,
    ['shorter', input('4.1', 'hours')],
    ['longer', input('8.3', 'hours')],
    ['just', input('246', 'minutes')],
    ['boiling', input('212', 'degrees F')],
    ['celsius', input('100', 'degrees C')],
  ]);
  const wait: FilledField = waits('wait', [
    [246, 'ended'],
    [498, 'ended'],
  ]);
  const filled = [numbers('minutes', 'minutes', [246, 498]), numbers('hours', 'hours', [4.1, 8.3]), wait];
  const rows = environmentOf(book([table('seen', 'washes', filled, null)], []), names);
  const holds = (condition: string) => askNumber(`count(seen where ${condition})`, rows).value;
  expect(['minutes <= shorter', 'minutes is shorter', 'minutes < longer', 'longer > minutes'].map(holds)).toEqual([
    1, 1, 1, 1,
  ]);
  expect(['longer is minutes', 'minutes >= longer', 'shorter >= minutes', 'hours is just'].map(holds)).toEqual([
    1, 1, 1, 1,
  ]);
  expect(['minutes is hours', 'hours is minutes', 'minutes in (shorter, longer)'].map(holds)).toEqual([2, 2, 2]);
  expect(ask('shorter is just', rows)).toEqual({ kind: 'truth', truth: true });
  expect(ask('just >= shorter', rows)).toEqual({ kind: 'truth', truth: true });
  expect(ask('boiling is celsius', rows)).toEqual({ kind: 'truth', truth: true });
  expect(askNumber('share_within(wait of seen, shorter)', rows).value).toBe(0.5);
  expect(askNumber('share_within(wait of seen, longer)', rows).value).toBe(1);
});

describe('times of rows', () => {
  const hour = 3_600_000;
  const instants = (name: string, values: readonly (number | null)[]): FilledField => {
    return { ...dates(name, values), field: { ...dates(name, []).field, kind: 'instant' } };
  };
  const filled = [
    instants('started', [0, 10 * hour, null]),
    instants('ended', [hour, 9 * hour, 5 * hour]),
    dates('due', [20_000, 20_005, null]),
    dates('done', [20_002, 20_001, 20_003]),
    numbers('lag', 'hours', [48, 24, 24]),
    numbers('steps', null, [1, 2, 3]),
  ];
  const moments = environmentOf(book([table('washes', 'washes', filled, null)], []), known);
  const asked = (text: string) => askNumber(text, moments);

  test('apart are minutes for moments and days for dates, earlier less than nothing', () => {
    expect(asked('sum((ended - started) of washes)')).toMatchObject({ value: 60 - 60, unit: 'minutes' });
    expect(asked('highest((ended - started) of washes)').value).toBe(60);
    expect(asked('lowest((ended - started) of washes)').value).toBe(-60);
    expect(asked('highest((done - due) of washes)')).toMatchObject({ value: 2, unit: 'days' });
    expect(asked('lowest((done - due) of washes)').value).toBe(-4);
  });

  test.each([
    ['started + half <= ended', 1],
    ['half + started <= ended', 1],
    ['ended - half >= started', 1],
    ['started - half < ended', 1],
    ['started + lag > ended', 2],
    ['lag + started > ended', 2],
    ['due + lag >= done', 2],
    ['due + lag > done', 1],
    ['lag + due is done', 1],
    ['done - lag < due', 1],
    ['done - 1 > due', 1],
    ['due - 4 is done', 1],
    ['done - opening < 0 * lag', 3],
    ['due is missing', 1],
    ['started is missing', 1],
    ['ended - started > half', 1],
  ])('%s holds for %d', (condition, rows) => {
    expect(asked(`count(washes where ${condition})`).value).toBe(rows);
  });

  test('beyond the calendar are missing', () => {
    expect(asked('count(washes where (due + 9999999) is missing)').value).toBe(3);
    expect(asked('count(washes where (due - 999999) is missing)').value).toBe(3);
  });
});

describe('two fields of one row', () => {
  const filled = [texts('one', ['x', 'y', null, 'z', 'y']), texts('other', ['y', 'y', 'x', null, 'x'])];
  const pairs = environmentOf(book([table('pairs', 'looks', filled, null)], []), known);
  const found = (condition: string) => {
    const value = valueOfFormula(`count(pairs where ${condition})`, pairs);
    return [value.kind === 'number' ? value.value : null, ...accountOf(value).map((one) => one.unknown)];
  };

  test.each([
    ['one is other', 1, 2],
    ['other is one', 1, 2],
    ['one is not other', 2, 2],
    ['one in (other, "z")', 2, 1],
    ['one not in (other, "z")', 2, 1],
    // What is missing from a list could be any text: nothing is known to be outside it (Kleene 1952).
    ['one in (nowhere, "y")', 2, 3],
    ['one not in (nowhere, "y")', 0, 3],
    ['one not in ("x", "y")', 1, 1],
  ])('%s holds for %d and is unclear for %d', (condition, rows, unclearRows) => {
    expect(found(condition)).toEqual([rows, unclearRows]);
  });
});

test.each([
  ['2 is 2', true],
  ['2 is 3', false],
  ['2 is not 2', false],
  ['2 is not 3', true],
  ['2 < 2', false],
  ['2 < 3', true],
  ['2 <= 2', true],
  ['3 <= 2', false],
  ['2 > 2', false],
  ['3 > 2', true],
  ['2 >= 2', true],
  ['2 >= 3', false],
])('of single values %s is %s', (text, truth) => {
  expect(ask(text)).toEqual({ kind: 'truth', truth });
});

describe('functions of single values over rows', () => {
  test.each([
    ['sum(if(contains(craft, "a"), 10, 1) of inspections)', 2 * 10 + 5],
    ['count(inspections where if(contains(craft, "a"), station, "x") is missing)', 1],
    ['count(inspections where if(contains(craft, "a"), station, "x") is "x")', 5],
    ['sum(min(minutes, tenth) of inspections)', 4 + 6 + 6 + 2 + 6 + 6 + 5],
    ['highest(min(contact_temp_f, warm) of decontaminations)', 140],
    ['lowest(max(contact_temp_f, warm) of decontaminations)', 140],
    ['distinct(first_known(day, opening) of inspections)', 2],
    ['sum(days_between(day, "2025-05-03") of inspections)', 4 * 2 + 3],
  ])('%s is %d', (text, value) => {
    const tenth = new Map([...known, ['tenth', input('0.1', 'hours')]]);
    expect(askNumber(text, environmentOf(smallBook, tenth)).value).toBeCloseTo(value, 9);
  });

  test('give units, texts and dates as they do for one', () => {
    expect(askNumber('mean(days_between(day, opening) of inspections)', environment).unit).toBe('days');
    expect(ask('listed(joined(craft, "-", inspector) of inspections)', environment)).toEqual({
      kind: 'text',
      text: 'a-p, a-q, b-p, b-r, c-q, d-p, e-r',
    });
    expect(ask('earliest(if(season is 2025, day, opening) of inspections)', environment)).toEqual(
      ask('opening', environment),
    );
    expect(ask('latest(first_known(day, opening) of inspections where station is "North")', environment)).toEqual(
      ask('opening + 1', environment),
    );
  });
});

test('whatever decides rows and comes from records is named, through texts, dates and sheets too', () => {
  const mean = 'mean(minutes of inspections)';
  const cells = [valueOfFormula(mean), valueOfFormula('half', environment)];
  const station = smallBook.tables.get('inspections')!.fields.get('station')!;
  const sheet = sheetValue(
    's',
    { fields: [station], rows: [['North'], ['South']] },
    new Map([['usual', { kind: kindOfValue(cells[0]!), cells }]]),
  );
  const names = new Map<string, Evaluated>([
    ...known,
    ['chosen', valueOfFormula(`if(${mean} > half, "North", "South")`, environment)],
    ['since', valueOfFormula(`if(${mean} > half, opening, opening + 1)`, environment)],
    ['total', valueOfFormula('sum(minutes of inspections)')],
    ['half_total', valueOfFormula('sum(minutes of inspections) / 2')],
    ['price', valueOfFormula('mean(amount of spending)')],
    ['fixed', valueOfFormula('if(1 < 2, "North", "South")')],
    ['s', sheet],
  ]);
  const deciding = (condition: string, rows = 'inspections', where: Group | null = null) =>
    askNumber(`count(${rows} where ${condition})`, environmentOf(smallBook, names, where)).cautions.filter(
      saysTakenAsKnown,
    );
  const said = (name: string) => [`${name} decides which rows are counted, and is taken as known`];
  expect(deciding('station is chosen')).toEqual(said('chosen'));
  expect(deciding('day >= since')).toEqual(said('since'));
  // One limit on a number of each row is drawn again with the rows that it decides; two, or another comparison, are not.
  expect(deciding('minutes < total')).toEqual([]);
  expect(deciding('minutes < total and minutes > half_total')).toEqual([...said('total'), ...said('half_total')]);
  expect(deciding('minutes is total')).toEqual(said('total'));
  expect(deciding('amount > price', 'spending')).toEqual(said('price'));
  expect(deciding('minutes < usual of s for "North"')).toEqual([]);
  expect(deciding('minutes is usual of s for "North"')).toEqual(said('usual of s for "North"'));
  expect(deciding('minutes < usual of s for "South"')).toEqual([]);
  expect(deciding('station is fixed and day >= opening and minutes < half')).toEqual([]);
  const group: Group = {
    table: 'inspections',
    rows: Uint32Array.of(1),
    keys: new Map([['station', 'North']]),
    decidedBy: ['usual'],
  };
  const inGroup = environmentOf(smallBook, names, group);
  expect(askNumber('count()', inGroup).cautions).toEqual(said('usual'));
  expect(accountOf(valueOfFormula('count(where minutes < total)', inGroup))[0]!.decidedBy).toEqual(['usual', 'total']);
});

describe('the same value for every row', () => {
  test.each([
    ['sum(2 of inspections)', 16],
    ['mean(half of inspections)', 30],
    ['sum(half of inspections where season is 1999)', 0],
    ['distinct("a" of inspections)', 1],
    ['distinct(nowhere of inspections)', 0],
    ['distinct(opening of inspections)', 1],
  ])('%s is %d', (text, value) => {
    expect(askNumber(text, environment).value).toBe(value);
  });

  test('is listed once, and is the earliest as well as the latest', () => {
    expect(ask('listed("a" of inspections)', environment)).toEqual({ kind: 'text', text: 'a' });
    expect(ask('listed(nowhere of inspections)', environment).kind).toBe('missing');
    const opening = ask('opening', environment);
    expect(ask('earliest(opening of inspections)', environment)).toEqual(opening);
    expect(ask('latest(opening of inspections)', environment)).toEqual(opening);
  });
});

test.each([
  [3, Uint8Array],
  [300, Uint16Array],
  [70_000, Uint32Array],
])('texts of %d kinds are found among all rows and among some', (kinds, codes) => {
  const names = Array.from({ length: kinds }, (_, kind) => `n${kind}`);
  const name = texts('name', [...names, null]);
  expect(name.column.codes).toBeInstanceOf(codes);
  const even = numbers('even', null, [...names.map((_, kind) => kind % 2), 0]);
  const all = environmentOf(book([table('seen', 'looks', [name, even], null)], []));
  const asked = (text: string) => askNumber(text, all).value;
  expect(asked(`count(seen where name is "n${kinds - 1}")`)).toBe(1);
  expect(asked(`count(seen where even is ${(kinds - 1) % 2} and name is "n${kinds - 1}")`)).toBe(1);
  expect(asked('distinct(name of seen where even is 0)')).toBe(Math.ceil(kinds / 2));
  expect(asked('count(seen where name is missing)')).toBe(1);
});

test('numbers kept in fewer bits, with a mark for the missing, are read as they are', () => {
  const values = [1.5, null, 250, 7];
  const small = { ...numbers('n', null, values), column: numberColumn(values) };
  const all = environmentOf(book([table('seen', 'looks', [small], null)], []));
  expect(askNumber('sum(n of seen)', all).value).toBe(258.5);
  expect(askNumber('count(seen where n > 1)', all).value).toBe(3);
  expect(askNumber('count(seen where n is missing)', all).value).toBe(1);
  expect(askNumber('sum(n of seen where n < 100)', all).value).toBe(8.5);
});

describe('the account of rows', () => {
  const group = (key: string | null): Group => {
    return { table: 'inspections', rows: Uint32Array.of(2, 5), keys: new Map([['standing_water', key]]) };
  };

  test('says in words how they came to be the ones', () => {
    const account = (text: string, where: Group | null = null, names = known) =>
      accountOf(valueOfFormula(text, environmentOf(smallBook, names, where)))[0]!;
    const long = valueOfFormula('inspections where length_ft > 15');
    const withLong = new Map<string, Evaluated>([['long', long]]);
    expect(account('count(inspections)')).toMatchObject({ description: 'inspections', considered: 8, unknown: 0 });
    expect(account('count(long where minutes > 5)', null, withLong)).toMatchObject({
      description: 'inspections where length_ft > 15 and minutes > 5',
      considered: 8,
      unknown: 2,
      rows: Uint32Array.of(1, 2, 4, 6),
    });
    expect(account('count()', group(null))).toMatchObject({
      description: 'inspections in the group where standing_water is missing',
      considered: 2,
    });
    expect(account('count(where season is 2024)', group('yes')).description).toBe(
      'inspections in the group where standing_water is "yes" and season is 2024',
    );
    expect(account('count(inspections here)', group('yes'))).toMatchObject({
      description: 'inspections here: standing_water is "yes"',
      considered: 2,
      rows: Uint32Array.of(0, 4),
    });
    expect(account('count(inspections here where season is 2024)', group('no')).description).toBe(
      'inspections here: standing_water is "no" where season is 2024',
    );
    expect(account('count(inspections here)', group(null)).rows).toEqual(Uint32Array.of(2, 5));
  });

  test('here is nothing where no row has the group’s key', () => {
    const keys = new Map([['station', 'East']]);
    const east: Group = { table: 'inspections', rows: new Uint32Array(0), keys };
    expect(askNumber('count(inspections here)', environmentOf(smallBook, known, east)).value).toBe(0);
    const two = new Map<string, string | number>([
      ['station', 'North'],
      ['season', 2025],
    ]);
    const both: Group = { table: 'inspections', rows: Uint32Array.of(2, 3), keys: two };
    expect(askNumber('count(inspections here)', environmentOf(smallBook, known, both)).value).toBe(2);
  });
});
