import { expect, test } from 'vitest';
import type { Group } from '../../src/formula/environment.js';
import { cellOf, sheetValue } from '../../src/formula/sheet/sheet-value.js';
import { unitOf } from '../../src/formula/unit/unit.js';
import { unitWord } from '../../src/formula/unit/word.js';
import { accountOf, type Evaluated, type NumberValue, type SheetValue } from '../../src/formula/value/evaluated.js';
import { kindOfValue } from '../../src/formula/value/kind-of-value.js';
import { unseenPart } from '../../src/formula/value/lift.js';
import { givenNumber } from '../../src/formula/value/number.js';
import type { BookField } from '../../src/record/book.js';
import { ask, askNumber, environmentOf, valueOfFormula } from './ask.js';
import { firstOfMay, smallBook } from './small-book.js';

// What can be counted is counted on the rows of the small book: inspections 0 to 3 are North's, 4 to 7 South's.

const station = smallBook.tables.get('inspections')!.fields.get('station')!;

function sheetOf(keys: readonly string[], cells: Readonly<Record<string, readonly Evaluated[]>>): SheetValue {
  const columns = Object.entries(cells).map(
    ([name, values]) => [name, { kind: kindOfValue(values[0]!), cells: values }] as const,
  );
  return sheetValue('s', { fields: [station], rows: keys.map((key) => [key]) }, new Map(columns));
}

const asking = (sheet: SheetValue) => environmentOf(smallBook, new Map<string, Evaluated>([['s', sheet]]));

/** The value of a formula in a group of rows for each list of them. */
function cellsOf(formula: string, lists: readonly (readonly number[])[], table = 'inspections'): readonly Evaluated[] {
  return lists.map((rows) => {
    const group: Group = { sheet: 's', table, rows: Uint32Array.from(rows), keys: new Map([['station', 'North']]) };
    return valueOfFormula(formula, environmentOf(smallBook, new Map(), group));
  });
}

const summed = (...cells: readonly Evaluated[]) =>
  valueOfFormula(
    'sum(n of s)',
    asking(
      sheetOf(
        cells.map((_, at) => `row ${at}`),
        { n: cells },
      ),
    ),
  ) as NumberValue;

test('counts of different rows of one table add up to a count of all of them, whatever the order', () => {
  const sum = summed(...cellsOf('count()', [[4, 5, 7], [], [0, 2]]));
  expect(sum.value).toBe(5);
  expect(sum.counted).toEqual({ table: 'inspections', rows: Uint32Array.of(0, 2, 4, 5, 7) });
});

test.each([
  [
    'the same rows twice',
    cellsOf('count()', [
      [0, 1],
      [1, 2],
    ]),
  ],
  ['the rows of two tables', [...cellsOf('count()', [[0, 1]]), ...cellsOf('count()', [[2, 3]], 'station_days')]],
  ['what is no count', [...cellsOf('count()', [[0, 1]]), ...cellsOf('sum(length_ft)', [[2, 3]])]],
])('a sum of counts of %s is no count of rows, so that no share of it is taken for exact', (_, cells) => {
  const units = cells.map((cell) => ({ ...(cell as NumberValue), unit: [] }));
  expect(summed(...units)).toMatchObject({ value: expect.any(Number), counted: null });
});

test('a sum that starts with what is no count is no count of rows', () => {
  const cells = [...cellsOf('sum(length_ft)', [[2, 3]]), ...cellsOf('count()', [[0, 1]])];
  expect(summed(...cells.map((cell) => ({ ...(cell as NumberValue), unit: [] }))).counted).toBeNull();
});

test('a column without any value has no sum, and says so', () => {
  const empty = cellsOf('highest(length_ft)', [[], [3]]);
  const found = askNumber('sum(n of s)', asking(sheetOf(['North', 'South'], { n: empty })));
  expect(found).toMatchObject({ value: null, unit: 'feet', why: 'no row of s has a value there', interval: null });
  expect(found.cautions).toEqual(['2 of 2 rows of s have no value there and are left out']);
});

test('rows that all have a value are not spoken of', () => {
  const whole = sheetOf(['North', 'South'], { n: cellsOf('count()', [[0], [4]]) });
  expect(askNumber('median(n of s)', asking(whole)).cautions).toEqual([]);
});

const half = [
  [0, 1, 2, 3],
  [4, 5, 6, 7],
];

test.each(['median(n of s)', 'rank_from_highest(n of s)'])(
  '%s has no interval where a number in the column is estimated and cannot be resampled',
  (text) => {
    const estimate = { ...givenNumber(3), standing: 'estimate' } as const;
    const [north] = cellsOf('share(count(where extent is "full"), count())', half);
    const group = { sheet: 's', table: 'inspections', rows: new Uint32Array(0), keys: new Map([['station', 'North']]) };
    const sheet = sheetOf(['North', 'South'], { n: [north!, estimate] });
    const found = askNumber(text, { ...asking(sheet), group });
    expect(found).toMatchObject({ value: expect.any(Number), interval: null, why: unseenPart });
  },
);

test('what bars one number of a column from having an interval bars what is made of the column', () => {
  const barred = valueOfFormula('lowest(length_ft of inspections) / count(station_days)');
  const [, other] = cellsOf('mean(length_ft)', half);
  const column = [
    { ...(other as NumberValue), unit: [] },
    { ...(barred as NumberValue), unit: [] },
  ];
  const found = askNumber('median(n of s)', asking(sheetOf(['North', 'South'], { n: column })));
  expect(found).toMatchObject({
    interval: null,
    why: 'a lowest or highest value is in it, which resampling cannot judge',
  });
});

test('what is made of a column rests on the fewest records of its numbers, and carries their cautions', () => {
  const [north] = cellsOf('mean(length_ft)', [[0, 1, 2, 4, 5, 6]]);
  const [few] = cellsOf('mean(length_ft)', [[1, 4]]);
  const found = (cells: readonly Evaluated[]) =>
    askNumber('median(n of s)', asking(sheetOf(['North', 'South'], { n: cells })));
  expect(found([north!, north!]).interval).not.toBeNull();
  expect(found([north!, few!]).why).toMatch(/rests on 2 records/);
  const spending = valueOfFormula('sum(amount of spending)');
  const said = 'spending: taken as given, because its rows belong to no station-day';
  expect(found([spending, spending]).cautions).toEqual([said]);
});

test('the texts, dates and numbers of columns, and keys of any kind, can be asked for behind where', () => {
  const day = (text: string | null): Evaluated =>
    text === null
      ? valueOfFormula('date_of(2025, 2, 30)')
      : valueOfFormula(`if(1 < 2, date_of(2025, 5, ${text}), date_of(2025, 5, ${text}))`);
  const minutes = unitOf(unitWord('minutes')!);
  const text = (value: string | null): Evaluated => ({ kind: 'text', text: value, accounts: [] });
  const columns = {
    opened: [day('1'), day(null), day('3')],
    named: [text('a'), text(null), text('b')],
    took: [givenNumber(90, minutes), givenNumber(30, minutes), givenNumber(null, minutes, 'not known')],
    plainly: [givenNumber(1), givenNumber(2), givenNumber(3)],
  } satisfies Record<string, readonly Evaluated[]>;
  const season: BookField = smallBook.tables.get('inspections')!.fields.get('season')!;
  const wait: BookField = smallBook.tables.get('decontaminations')!.fields.get('turnaround')!;
  const keys = {
    fields: [station, season, wait],
    rows: [
      ['North', 2024, 'ended'],
      [null, 2025, 'open'],
      ['South', null, 'ended'],
    ],
  };
  const filled = Object.entries(columns).map(
    ([name, cells]) => [name, { kind: kindOfValue(cells[0]!), cells }] as const,
  );
  const sheet = sheetValue('s', keys, new Map([...filled, ['broken', { kind: { kind: 'unknown' }, cells: [] }]]));
  const hours = givenNumber(1, unitOf(unitWord('hours')!));
  const environment = environmentOf(
    smallBook,
    new Map<string, Evaluated>([
      ['s', sheet],
      ['limit', hours],
    ]),
  );
  const rowsWhere = (condition: string) => askNumber(`count(s where ${condition})`, environment).value;
  expect(rowsWhere('opened > "2025-05-01"')).toBe(1);
  expect(rowsWhere('opened is missing')).toBe(1);
  expect(rowsWhere('named is "b"')).toBe(1);
  expect(rowsWhere('named is missing')).toBe(1);
  expect(rowsWhere('took > limit')).toBe(1);
  expect(rowsWhere('took is missing')).toBe(1);
  expect(rowsWhere('plainly between 2 and 3')).toBe(2);
  expect(rowsWhere('station is "South"')).toBe(1);
  expect(rowsWhere('station is missing')).toBe(1);
  expect(rowsWhere('season is 2025')).toBe(1);
  expect(rowsWhere('season is missing')).toBe(1);
  expect(rowsWhere('turnaround is "ended"')).toBe(2);
  expect([...sheet.table.fields.values()].map(({ name, kind, unit }) => [name, kind, unit])).toEqual([
    ['opened', 'date', null],
    ['named', 'text', null],
    ['took', 'number', 'minutes'],
    ['plainly', 'number', null],
    ['station', 'text', null],
    ['season', 'number', 'year'],
    ['turnaround', 'text', 'minutes'],
  ]);
  expect(ask('opened of s for ("North", 2024, "ended")', environment)).toEqual({ kind: 'date', day: firstOfMay });
  expect(accountOf(sheet)).toEqual([]);
});

test('a cell or column that a sheet does not have is our own mistake', () => {
  const sheet = sheetOf(['North'], { n: [givenNumber(1)] });
  expect(cellOf(sheet, 'n', 0)).toMatchObject({ value: 1 });
  expect(() => cellOf(sheet, 'n', 1)).toThrow('has no n in row 1');
  expect(() => cellOf(sheet, 'm', 0)).toThrow('has no m');
  expect(() => sheet.table.column('m')).toThrow('has no m');
});

test('a column of estimates and of numbers that stand still is resampled where it can change', () => {
  const [estimate] = cellsOf('mean(length_ft)', [[0, 1, 2, 4, 5, 6]]);
  const mixed = (still: number) =>
    asking(
      sheetOf(['North', 'South', 'East'], {
        n: [estimate!, givenNumber(still), givenNumber(still)].map((cell) => ({ ...(cell as NumberValue), unit: [] })),
      }),
    );
  const group = { sheet: 's', table: 'inspections', rows: new Uint32Array(0), keys: new Map([['station', 'North']]) };
  const draws = (text: string, environment: ReturnType<typeof asking>) => {
    const value = valueOfFormula(text, environment) as NumberValue;
    return value.draws === null ? null : [...value.draws()];
  };
  const own = [...(estimate as NumberValue).draws!()];
  // Of three numbers the median is the middle one; the place is one more than how many are higher.
  const still = [...own].sort((a, b) => a - b)[1000]!;
  expect(draws('median(n of s)', mixed(still))).toEqual(own.map(() => still));
  expect(draws('quantile(n of s, 0.75)', mixed(still))).toEqual(
    own.map((one) => (one > still ? expect.closeTo((one + still) / 2, 9) : still)),
  );
  expect(draws('rank_from_highest(n of s)', { ...mixed(still), group })).toEqual(
    own.map((one) => (one < still ? 3 : 1)),
  );
  const fixed = asking(sheetOf(['North', 'South'], { n: [givenNumber(1), givenNumber(2)] }));
  expect([draws('median(n of s)', fixed), draws('rank_from_lowest(n of s)', { ...fixed, group })]).toEqual([
    null,
    null,
  ]);
});

test('rows without a value are spoken of by whatever is made of the column, and what is given is no ratio of records', () => {
  const said = '1 of 2 rows of s have no value there and are left out';
  const group = { sheet: 's', table: 'inspections', rows: new Uint32Array(0), keys: new Map([['station', 'North']]) };
  const environment = {
    ...asking(sheetOf(['North', 'South'], { n: cellsOf('highest(length_ft)', [[0, 1], []]) })),
    group,
  };
  for (const name of ['lowest', 'highest', 'median', 'mean', 'sum', 'rank_from_highest']) {
    expect(askNumber(`${name}(n of s)`, environment).cautions).toContain(said);
  }
  expect(askNumber('rate(3, 4)')).toMatchObject({ value: 0.75, cautions: [], interval: null });
});
