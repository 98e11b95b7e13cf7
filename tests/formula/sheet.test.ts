import { expect, test } from 'vitest';
import type { Group } from '../../src/formula/environment.js';
import { sheetValue } from '../../src/formula/sheet/sheet-value.js';
import { unitOf } from '../../src/formula/unit/unit.js';
import { unitWord } from '../../src/formula/unit/word.js';
import type { Evaluated } from '../../src/formula/value/evaluated.js';
import { kindOfValue } from '../../src/formula/value/kind-of-value.js';
import { givenNumber } from '../../src/formula/value/number.js';
import { ask, askNumber, environmentOf, problemsOf, valueOfFormula } from './ask.js';
import { smallBook } from './small-book.js';

// Every expected number in this file can be counted on the rows of the small book: four inspections at North, one of them
// an interception, and four at South, one too.

const stations = ['North', 'South', 'East'];
const groups: readonly Group[] = stations.map((station) => ({
  sheet: 'by_station',
  table: 'inspections',
  rows: { North: Uint32Array.of(0, 1, 2, 3), South: Uint32Array.of(4, 5, 6, 7) }[station] ?? new Uint32Array(0),
  keys: new Map([['station', station]]),
}));

function column(formula: string): { kind: ReturnType<typeof kindOfValue>; cells: readonly Evaluated[] } {
  const cells = groups.map((group) => valueOfFormula(formula, environmentOf(smallBook, new Map(), group)));
  return { kind: kindOfValue(cells[0]!), cells };
}

const field = smallBook.tables.get('inspections')!.fields.get('station')!;
const byStation = sheetValue(
  'by_station',
  { fields: [field], rows: stations.map((station) => [station]) },
  new Map([
    ['inspected', column('count()')],
    ['longest', column('highest(length_ft)')],
    ['share_full', column('share(count(where extent is "full"), count())')],
    ['name', column('lower_case(station)')],
    ['broken', { kind: { kind: 'unknown' }, cells: [] }],
  ]),
  Uint32Array.of(1, 0, 2),
);
const known = new Map<string, Evaluated>([['by_station', byStation]]);
const outside = environmentOf(smallBook, known);
const [north, south, east] = groups.map((group) => environmentOf(smallBook, known, group)) as [
  typeof outside,
  typeof outside,
  typeof outside,
];

test.each([
  ['inspected of by_station for "South"', 4, 'inspections'],
  ['inspected of by_station for "South" / count(inspections)', 0.5, ''],
  ['longest of by_station for "South" - longest of by_station for "North"', 20, 'feet'],
  ['sum(inspected of by_station)', 8, 'inspections'],
  ['count(by_station)', 3, 'rows'],
  ['count(by_station where inspected > 0)', 2, 'rows'],
  ['mean(inspected of by_station where station is not "East")', 4, 'inspections'],
  ['highest(longest of by_station)', 50, 'feet'],
  ['lowest(longest of by_station where station in ("North", "South"))', 30, 'feet'],
])('outside the sheet %s is %d', (text, value, unit) => {
  expect(askNumber(text, outside)).toMatchObject({ value, unit });
});

test('a lookup by the row’s own key finds the row of its group, in any sheet that has the key', () => {
  expect(askNumber('inspected of by_station for station', south).value).toBe(4);
  expect(ask('name of by_station for station', south)).toEqual({ kind: 'text', text: 'south' });
  expect(askNumber('sum(inspected of by_station here)', south).value).toBe(4);
});

test('a lookup keeps numerator, denominator and interval of the cell', () => {
  expect(askNumber('share_full of by_station for "North"', outside)).toEqual(
    askNumber('share(count(where extent is "full"), count())', north),
  );
});

test('what a sheet has no row for is missing, and says so', () => {
  expect(askNumber('inspected of by_station for joined("W", "est")', outside)).toMatchObject({
    value: null,
    why: 'the sheet by_station has no row for West',
  });
});

test('rows without a value are left out of a sum, and it says how many', () => {
  const sum = askNumber('sum(longest of by_station)', outside);
  expect(sum.value).toBe(80);
  expect(sum.cautions).toContain('1 of 3 rows of by_station have no value there and are left out');
});

test('a count by the sum of its sheet is an exact share', () => {
  expect(askNumber('share(inspected, sum(inspected of by_station))', withColumn(south, 'inspected', 1))).toMatchObject({
    value: 0.5,
    numerator: 4,
    denominator: 8,
  });
});

test('ranks share the better place, and a row without a value has none', () => {
  const ranks = (name: string, of: string) =>
    [north, south, east].map((row) => askNumber(`${name}(${of} of by_station)`, row).value);
  expect(ranks('rank_from_highest', 'inspected')).toEqual([1, 1, 3]);
  expect(ranks('rank_from_lowest', 'inspected')).toEqual([2, 2, 1]);
  expect(ranks('rank_from_highest', 'longest')).toEqual([2, 1, null]);
});

test('a running sum goes down the rows as they are shown', () => {
  // South is shown first, then North, then East.
  expect([south, north, east].map((row) => askNumber('running_sum(inspected of by_station)', row).value)).toEqual([
    4, 8, 8,
  ]);
});

const given = (numbers: readonly (number | null)[]) => ({
  kind: { kind: 'number', unit: [] } as const,
  cells: numbers.map((number) => givenNumber(number, [], number === null ? 'not known' : null)),
});

test.each([
  ['median(amount of amounts)', 3.5],
  ['quantile(amount of amounts, 0.9)', 6.9],
  ['quantile(amount of amounts, 0.25)', 1.75],
  ['median(amount of amounts where amount > 4)', 6],
])('over a column %s is the quantile of type 7 that R gives', (text, expected) => {
  // R 4, quantile(c(3, 1, 4, 1, 5, 9, 2, 6), c(.5, .9, .25), type = 7) and median(c(5, 9, 6)).
  const amounts = [3, 1, 4, 1, null, 5, 9, 2, 6];
  const rows = amounts.map((_, row) => [`row ${row}`]);
  const sheet = sheetValue('amounts', { fields: [field], rows }, new Map([['amount', given(amounts)]]));
  const found = askNumber(text, environmentOf(smallBook, new Map([['amounts', sheet]])));
  expect(found.value).toBeCloseTo(expected, 12);
  if (!text.includes('where'))
    expect(found.cautions).toEqual(['1 of 9 rows of amounts have no value there and are left out']);
});

test('a quantile of a column keeps what its numbers are: a census, or an estimate that is resampled with them', () => {
  expect(askNumber('median(inspected of by_station)', outside)).toMatchObject({ value: 4, interval: null, why: null });
  expect(askNumber('quantile(inspected of by_station, 1 + 0.5)', outside)).toMatchObject({ value: null });
  // Of two numbers the median is the mean, in every resample as well.
  const two = 'share_full of by_station where station is not "East"';
  const draws = (text: string) => {
    const value = valueOfFormula(text, outside);
    return value.kind === 'number' && value.draws !== null ? [...value.draws()] : [];
  };
  const [middle, mean] = [draws(`median(${two})`), draws(`mean(${two})`)];
  expect(middle).toHaveLength(outside.resamples.count);
  middle.forEach((value, draw) => {
    expect(value).toBeCloseTo(mean[draw]!, 12);
  });
});

test('a column of thousands of rows is added up, and so are its resamples', () => {
  const inspected = valueOfFormula('count(inspections where station is "South")', outside);
  const rows = Array.from({ length: 20_000 }, (_, row) => [`row ${row}`]);
  const cells = rows.map(() => inspected);
  const columns = new Map([['inspected', { kind: kindOfValue(inspected), cells }]]);
  const sheet = sheetValue('many', { fields: [field], rows }, columns);
  const environment = environmentOf(smallBook, new Map([['many', sheet]]));
  const many = valueOfFormula('sum(inspected of many)', environment);
  if (many.kind !== 'number' || inspected.kind !== 'number') throw new Error('no number');
  expect(many.value).toBe(80_000);
  expect(many.draws!()).toEqual(inspected.draws!().map((draw) => draw * 20_000));
  expect(many.clusters()).toEqual(inspected.clusters());
});

test('temperatures in a column have a mean, whose scale may begin anywhere', () => {
  const unit = unitOf(unitWord('degrees F')!);
  const cells = [130, 140, 153].map((degrees) => givenNumber(degrees, unit));
  const sheet = sheetValue(
    'temperatures',
    { fields: [field], rows: stations.map((station) => [station]) },
    new Map([['contact', { kind: { kind: 'number', unit }, cells }]]),
  );
  const environment = environmentOf(smallBook, new Map([['temperatures', sheet]]));
  expect(askNumber('mean(contact of temperatures)', environment)).toMatchObject({ value: 141, unit: 'degrees F' });
});

test('a running sum starts anew for every value of the keys behind it', () => {
  // R 4: x <- c(3, 1, 4, 1, 5, 9); ave(x, c("a","a","b","b","b","a"), FUN = cumsum) is 3 4 4 5 10 13.
  const keys = ['North', 'North', 'South', 'South', 'South', 'North'].map((station, at) => [
    station,
    `2025-0${at + 1}`,
  ]);
  const month = { ...field, name: 'month' };
  const sheet = sheetValue(
    'by_month',
    { fields: [field, month], rows: keys },
    new Map([['amount', given([3, 1, 4, 1, 5, 9])]]),
  );
  const known = new Map<string, Evaluated>([['by_month', sheet]]);
  const sums = (text: string) =>
    keys.map(([station, own]) => {
      const keysOf = new Map([
        ['station', station!],
        ['month', own!],
      ]);
      const group = { sheet: 'by_month', table: 'inspections', rows: new Uint32Array(0), keys: keysOf };
      return askNumber(text, environmentOf(smallBook, known, group)).value;
    });
  expect(sums('running_sum(amount of by_month, station)')).toEqual([3, 4, 4, 5, 10, 13]);
  expect(sums('running_sum(amount of by_month, station, month)')).toEqual([3, 1, 4, 1, 5, 9]);
  expect(sums('running_sum(amount of by_month)')).toEqual([3, 4, 8, 9, 14, 23]);
});

test.each([
  ['running_sum(inspected of by_station, statio)', 'station'],
  ['running_sum(inspected of by_station, inspected)', 'station'],
  ['running_sum(inspected of by_station, 2)', 'station'],
])('%s is told as no key of the sheet', (text, words) => {
  const [problem, ...more] = problemsOf(text, north);
  expect(more).toEqual([]);
  expect(problem).toMatchObject({ code: 'unknown-column', remedy: expect.stringContaining(words) });
});

test.each([
  ['inspecte of by_station for "South"', 'unknown-column', 'inspected'],
  ['inspected of by_statin for "South"', 'unknown-sheet', 'by_station'],
  ['inspected of by_station for "Sout"', 'unknown-code', 'South'],
  ['inspected of by_station for ("South", 2025)', 'wrong-arguments', 'for station'],
  ['inspected of by_station', 'field-alone', 'sum('],
  ['by_station where inspected > 2', 'wrong-kind', 'Count the rows'],
  ['distinct(inspected of by_station)', 'wrong-kind', 'distinct'],
  ['sum(inspected / 2 of by_station)', 'wrong-kind', 'column of its own'],
  ['sum(name of by_station)', 'wrong-kind', 'sum'],
  ['rank_from_highest(inspected of by_station)', 'not-this-sheet', 'by_station'],
  ['rank_from_highest(inspected of inspections)', 'wrong-kind', 'rank_from_highest(inspected of by_station)'],
])('%s is told as %s with a way out', (text, code, words) => {
  const [problem, ...more] = problemsOf(text, outside);
  expect(more).toEqual([]);
  expect(problem!.code).toBe(code);
  expect(problem!.remedy).toContain(words);
});

test('a column that has a problem of its own makes no further ones', () => {
  expect(problemsOf('sum(broken of by_station) + 1', outside)).toEqual([]);
  expect(problemsOf('broken of by_station for "South"', outside)).toEqual([]);
  expect(problemsOf('count(by_station where broken > 2)', outside)).toEqual([]);
});

function withColumn(environment: typeof outside, name: string, row: number): typeof outside {
  return { ...environment, known: new Map([...environment.known, [name, byStation.cells.get(name)![row]!]]) };
}
