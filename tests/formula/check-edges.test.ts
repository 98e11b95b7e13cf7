import { describe, expect, test } from 'vitest';
import { checkFormula } from '../../src/formula/check.js';
import { inputValue } from '../../src/formula/input-value.js';
import { sheetValue } from '../../src/formula/sheet/sheet-value.js';
import type { Evaluated } from '../../src/formula/value/evaluated.js';
import { kindOfValue } from '../../src/formula/value/kind-of-value.js';
import { askNumber, environmentOf, problemsOf, read, valueOfFormula } from './ask.js';
import { book, dates, smallBook, table, texts } from './small-book.js';

// What is expected follows from the rules of the language: what each part takes, and that a mistake is told once, at its place.

const at = { file: 'season.md', line: 3, column: 9 };

function input(value: string, unit = ''): Evaluated {
  const found = inputValue(value, unit, { value: at, unit: { ...at, column: 20 } });
  if ('problems' in found && !('kind' in found)) throw new Error(found.problems[0]!.wanted);
  return found as Evaluated;
}

const moment = (name: string) => ({
  ...dates(name, [0, 1]),
  field: { ...dates(name, []).field, kind: 'instant' as const },
});
const visits = table(
  'visits',
  'visits',
  [
    moment('began'),
    moment('over'),
    dates('due', [0, 1]),
    texts('shade', ['a', 'b'], [...'abcdefghij']),
    texts('tint', ['a', 'b'], [...'abcdefgh']),
  ],
  null,
);
const withVisits = book([...smallBook.tables.values(), visits], [0, 0, 1, 1]);

const field = smallBook.tables.get('inspections')!.fields.get('station')!;
const stations = ['North', 'South'];
const inStation = (station: string, known: ReadonlyMap<string, Evaluated> = new Map()) =>
  environmentOf(withVisits, known, {
    sheet: 'by_station',
    table: 'inspections',
    rows: station === 'North' ? Uint32Array.of(0, 1, 2, 3) : Uint32Array.of(4, 5, 6, 7),
    keys: new Map([['station', station]]),
  });
const column = (formula: string) => {
  const cells = stations.map((station) => valueOfFormula(formula, inStation(station)));
  return { kind: kindOfValue(cells[0]!), cells };
};
const byStation = sheetValue(
  'by_station',
  { fields: [field], rows: stations.map((station) => [station]) },
  new Map([
    ['inspected', column('count()')],
    ['typical', column('mean(length_ft)')],
    ['name', column('lower_case(station)')],
    ['first_day', column('earliest(day)')],
  ]),
  Uint32Array.of(0, 1),
);

const known = new Map<string, Evaluated>([
  ['by_station', byStation],
  ['wage', input('20', 'dollars an hour')],
  ['limit', input('1.5', 'hours')],
  ['opening', input('2025-05-01')],
  ['place', input('Zzzzzz')],
  ['watched', input('North, South', 'list')],
  ['full', valueOfFormula('inspections where extent is "full"')],
]);
known.set('failed', { kind: 'problem', problems: [] });
const environment = environmentOf(withVisits, known);
const inSheet = inStation('North', known);

/** Every problem as its code, what was seen, what was wanted and the remedy. */
const told = (text: string, where = environment) =>
  problemsOf(text, where).map(({ code, seen, wanted, remedy }) => [code, seen, wanted, remedy]);

/** Codes with the place in the formula, which begins at column 5. */
const placed = (text: string, where = environment) =>
  problemsOf(text, where).map(({ code, place }) => [code, place.column! - 5]);

describe('arithmetic', () => {
  test('of rows asks for their count, and of anything else for numbers', () => {
    const count = 'Count the rows with count(…).';
    const numbersOnly = 'Calculate with numbers; two dates can be subtracted, and days added to a date.';
    expect(told('inspections + 1')).toEqual([
      ['wrong-kind', 'inspections', 'a number, not rows of inspections', count],
    ]);
    expect(told('2 * by_station')).toEqual([['wrong-kind', 'by_station', 'a number, not the sheet by_station', count]]);
    expect(told('"a" + 1')).toEqual([['wrong-kind', 'a', 'a number, not a text', numbersOnly]]);
    expect(told('-"a"')).toEqual([['wrong-kind', 'a', 'a number, not a text', numbersOnly]]);
    expect(told('-(1 < 2)')[0]!.slice(2)).toEqual(['a number, not true or false', numbersOnly]);
  });

  test('on what has a problem of its own says nothing more', () => {
    for (const text of [
      '-nothing_here',
      'nothing_here + "a"',
      '"a" + nothing_here',
      'opening + nothing_here',
      'nothing_here * opening',
    ]) {
      expect(problemsOf(text, environment).map(({ code }) => code)).toEqual(['unknown-name']);
    }
  });

  test('of dates: apart they are days and moments minutes, and nothing else can be made of two', () => {
    const kindOf = (text: string) => {
      const of = read(`mean((${text}) of visits)`);
      const kinds = new Map([...known].map(([name, value]) => [name, kindOfValue(value)]));
      return checkFormula(of, { book: withVisits, known: kinds, sheet: null });
    };
    expect(kindOf('over - began')).toEqual({ kind: kindOfValue(input('1', 'minutes')), problems: [] });
    expect(kindOf('due - opening')).toEqual({ kind: kindOfValue(input('1', 'days')), problems: [] });
    expect(askNumber('mean((over - began) of visits)', environment).unit).toBe('minutes');
    expect(askNumber('mean((due - opening) of visits)', environment).unit).toBe('days');
    const remedy = 'Subtract one from the other, or add a number of days.';
    expect(told('mean((due - began) of visits)')).toEqual([['wrong-kind', '-', 'two dates, or two moments', remedy]]);
    const difference = 'a difference: two dates can only be subtracted';
    expect(told('mean((due + due) of visits)')).toEqual([['wrong-kind', '+', difference, remedy]]);
    expect(told('mean((over * began) of visits)')).toEqual([['wrong-kind', '*', difference, remedy]]);
  });

  test('of a date with a number moves it, by days where they are written, and in no other way', () => {
    const remedy = 'Add days to a date or subtract them: season_start + 30.';
    for (const [text, operator] of [
      ['opening * 2', '*'],
      ['opening / 2', '/'],
      ['5 - opening', '-'],
      ['5 / opening', '/'],
    ] as const) {
      expect(told(text)).toEqual([['wrong-kind', operator, 'a date that is moved by days', remedy]]);
    }
    for (const text of ['opening + 2', '2 + opening', 'opening - 2', 'opening + limit', 'opening - -2']) {
      expect(told(text)).toEqual([]);
    }
    expect(told('opening + wage')[0]!.slice(0, 2)).toEqual(['units-differ', '+']);
    // A plain number says days of a date; of a moment it could be minutes as well.
    expect(told('count(visits where due + 2 > due)')).toEqual([]);
    expect(told('count(visits where began + 2 > over)').map(([code, seen]) => [code, seen])).toEqual([
      ['units-differ', '+'],
    ]);
    expect(told('count(visits where began + limit > over)')).toEqual([]);
  });

  test('of temperatures knows no product, on either side, and no sign', () => {
    const mean = 'mean(contact_temp_f of decontaminations)';
    for (const text of [`${mean} * 2`, `2 * ${mean}`, `${mean} / ${mean}`]) {
      expect(told(text)[0]!.slice(2)).toEqual([
        'something with a true zero; a temperature scale has none',
        'Multiply and divide differences of temperatures.',
      ]);
    }
    expect(told(`-${mean}`)).toEqual([
      ['units-differ', `-${mean}`, 'something with a true zero', 'Take the sign out.'],
    ]);
    expect(told(`-(${mean} - ${mean})`)).toEqual([]);
  });
});

describe('what a function takes', () => {
  test.each([
    ['sum(outcome of inspections)', 'outcome', 'a number field of some rows, not a text'],
    ['mean(day of inspections)', 'day', 'a number field of some rows, not a date'],
    ['median(outcome of inspections)', 'outcome', 'a number or wait field of some rows, not a text'],
    ['quantile(day of inspections, 0.5)', 'day', 'a number or wait field of some rows, not a date'],
    ['share_within(minutes of inspections, limit)', 'minutes', 'a wait of some rows, not a number in minutes'],
    ['share_within(outcome of inspections, limit)', 'outcome', 'a wait of some rows, not a text'],
    ['earliest(outcome of inspections)', 'outcome', 'a date field of some rows, not a text'],
    ['latest(length_ft of inspections)', 'length_ft', 'a date field of some rows, not a number in feet'],
    ['quantile(length_ft of inspections, "a")', 'a', 'a number, not a text'],
    ['rate(opening, 2)', 'opening', 'a number, not a date'],
    ['if(3, 1, 2)', '3', 'a condition, not a plain number'],
    ['if(1 < 2, inspections, 2)', 'inspections', 'a number, a text or a date, not rows of inspections'],
    ['if(1 < 2, watched, watched)', 'watched', 'a number, a text or a date, not a list of values'],
    ['first_known(1 < 2, 3)', '1 < 2', 'a number, a text or a date, not true or false'],
    ['min(1, opening)', 'opening', 'a number, not a date'],
    ['lower_case(opening)', 'opening', 'a text, not a date'],
    ['year_of(wage)', 'wage', 'a date, not a number in dollars an hour'],
    ['count(3)', '3', 'rows of a table, not a value'],
    ['count(minutes of inspections)', 'minutes of inspections', 'rows of a table, not a field of rows'],
    ['sum(inspections)', 'inspections', 'a number field of some rows, not the rows themselves'],
    ['distinct(full)', 'full', 'a field of some rows, not the rows themselves'],
  ])('%s: at %s, %s', (text, seen, wanted) => {
    expect(
      told(text)
        .map(([code, found, why]) => [code, found, why])
        .at(0),
    ).toEqual(['wrong-kind', seen, wanted]);
  });

  test('a share that is written is held to what a share can be, with its sign', () => {
    expect(placed('quantile(length_ft of inspections, -0.5)')).toEqual([['out-of-range', 35]]);
    expect(placed('quantile(length_ft of inspections, 1.5)')).toEqual([['out-of-range', 35]]);
    expect(placed('quantile(length_ft of inspections, 0.5)')).toEqual([]);
  });

  test('too few, too many, and how many were wanted', () => {
    expect(told('sum()')[0]!.slice(0, 1)).toEqual(['wrong-arguments']);
    expect(told('sum(length_ft of inspections, 2)')[0]!.slice(0, 3)).toEqual([
      'wrong-arguments',
      'sum(length_ft of inspections, 2)',
      'one argument (field of rows), not 2',
    ]);
    expect(told('rate(1)')[0]!.slice(2, 3)).toEqual(['2 arguments (cases, of), not 1']);
    expect(told('rate(1, 2, 3)')[0]!.slice(2, 3)).toEqual(['2 arguments (cases, of), not 3']);
    expect(told('min(1)')[0]!.slice(2, 3)).toEqual(['2 arguments (number, number), not 1']);
    expect(told('if(1 < 2, 3)')[0]!.slice(0, 1)).toEqual(['wrong-arguments']);
    expect(told('count(inspections, full)')[0]!.slice(0, 1)).toEqual(['wrong-arguments']);
    expect(told('min(1, 2, 3, 4)')).toEqual([]);
    expect(told('first_known(1, 2, 3)')).toEqual([]);
    expect(told('joined("a", "b", "c")')).toEqual([]);
    expect(told('count()', inSheet)).toEqual([]);
    expect(told('running_sum(inspected of by_station)', inSheet)).toEqual([]);
    expect(told('running_sum()', inSheet)[0]!.slice(0, 1)).toEqual(['wrong-arguments']);
  });

  test('values among which one is chosen are of one kind and of units that go together', () => {
    const remedy = 'Give values of one kind.';
    expect(told('if(1 < 2, "a", 3)')).toEqual([
      ['wrong-kind', '3', 'a text like the first value, not a plain number', remedy],
    ]);
    expect(told('if(1 < 2, limit, "a")')).toEqual([
      ['wrong-kind', 'a', 'a number in hours like the first value, not a text', remedy],
    ]);
    expect(told('if(1 < 2, opening, opening)')).toEqual([]);
    expect(told('first_known(opening, "a")')[0]!.slice(1, 3)).toEqual(['a', 'a date like the first value, not a text']);
    expect(placed('if(1 < 2, limit, wage)')).toEqual([['units-differ', 17]]);
    expect(placed('if(1 < 2, limit, 3)')).toEqual([]);
    expect(placed('min(limit, limit * 2, wage, wage)')).toEqual([
      ['units-differ', 22],
      ['units-differ', 28],
    ]);
    expect(placed('if(1 < 2, nothing_here, "a")')).toEqual([['unknown-name', 10]]);
    expect(placed('if(station is "North", station, "a") is "a"', inSheet)).toEqual([]);
  });

  test('a date that is written is one that the calendar has', () => {
    const remedy = 'Write year, month and day: "2025-05-01".';
    expect(told('year_of("2025-02-30")')).toEqual([
      ['not-a-date', '2025-02-30', 'a date that the calendar has', remedy],
    ]);
    expect(told('year_of("2025-02-28")')).toEqual([]);
    expect(told('year_of(lower_case("a"))')[0]!.slice(0, 3)).toEqual([
      'wrong-kind',
      'lower_case("a")',
      'a date, not a text',
    ]);
  });

  test('a column or key of the sheet is one, of the sheet that the formula stands in', () => {
    const rank = (of: string) => told(`rank_from_highest(${of})`, inSheet).map((one) => one.slice(0, 3));
    const own = ['wrong-kind', expect.any(String), 'a column of this sheet, and the sheet’s name after `of`'];
    expect(rank('inspected of by_station')).toEqual([]);
    expect(rank('inspected')).toEqual([own]);
    expect(rank('name of by_station')).toEqual([['wrong-kind', 'name', 'a column of this sheet, not a text']]);
    const whole = ['not-this-sheet', expect.any(String), 'the whole sheet, without `where` or `here`'];
    expect(rank('inspected of by_station where inspected > 2')).toEqual([whole]);
    expect(rank('inspected of by_station here')).toEqual([whole]);
    expect(told('running_sum(inspected of by_station, statio)', inSheet)).toEqual([
      ['unknown-column', 'statio', 'a key of the sheet that the formula stands in', 'Did you mean `station`?'],
    ]);
    expect(told('running_sum(inspected of by_station, 2)', inSheet)[0]!.slice(3)).toEqual(['Its keys are station.']);
    expect(told('running_sum(inspected of by_station, qqq)')).toHaveLength(2);
    expect(told('running_sum(inspected of by_station, qqq)')[1]!.slice(3)).toEqual(['Take it out.']);
  });

  test('a name that is no function is told with the nearest, or with all', () => {
    expect(told('cuont(inspections)')).toEqual([['unknown-function', 'cuont', 'a function', 'Did you mean `count`?']]);
    expect(told('qqqqqqqqqqqq(1)')[0]![3]).toMatch(/^The functions are count, .*\.$/);
  });
});

describe('conditions and comparisons', () => {
  test('a value alone is none', () => {
    const listed = 'Several values are listed as: outcome in ("intercepted", "refused").';
    expect(told('1 < 2 and "x"')).toEqual([['wrong-kind', 'x', 'a condition, not a text', listed]]);
    expect(told('not "x"')).toEqual([['wrong-kind', 'x', 'a condition, not a text', listed]]);
    expect(told('3 or 1 < 2')).toEqual([
      ['wrong-kind', '3', 'a condition, not a plain number', 'Compare it with something.'],
    ]);
    expect(told('not inspections')[0]!.slice(2)).toEqual([
      'a condition, not rows of inspections',
      'Compare it with something.',
    ]);
    expect(told('not nothing_here').map(([code]) => code)).toEqual(['unknown-name']);
    expect(told('count(inspections where length_ft)')[0]!.slice(2)).toEqual([
      'a condition after `where`, not a number in feet',
      'Compare it with a value: where standing_water is "yes".',
    ]);
    expect(told('count(inspections where nothing_here)').map(([code]) => code)).toEqual(['unknown-field']);
  });

  test.each([
    ['full is 3', 'full', 'a value to compare, not rows of inspections', 'Compare count(…) of the rows.'],
    [
      'by_station is 3',
      'by_station',
      'a value to compare, not the sheet by_station',
      'Compare count(…) of its rows, or look one of its columns up.',
    ],
    [
      'watched is "North"',
      'watched',
      'a value to compare, not a list of values',
      'Ask whether something is `in` the list.',
    ],
    [
      '(1 < 2) is 3',
      '1 < 2',
      'a value to compare, not true or false',
      'A condition stands alone: write it or `not` before it.',
    ],
    [
      '3 is (1 < 2)',
      '1 < 2',
      'a value to compare, not true or false',
      'A condition stands alone: write it or `not` before it.',
    ],
    ['3 is "a"', 'a', 'a plain number, because that is what it is compared with', 'Compare like with like.'],
    ['place is 3', '3', 'a text, because that is what it is compared with', 'Put texts in double quotes.'],
    ['opening is 3', '3', 'a date, because that is what it is compared with', 'Compare like with like.'],
    ['opening is lower_case("a")', 'lower_case("a")', 'a date', 'Compare dates with dates.'],
    ['lower_case("a") is opening', 'lower_case("a")', 'a date', 'Compare dates with dates.'],
    ['count(inspections where day is station)', 'station', 'a date', 'Compare dates with dates.'],
    [
      'count(inspections where outcome between "a" and lower_case("b"))',
      'between',
      'numbers or dates, which have an order',
      'Texts can only be compared with `is`, `is not` and `in`.',
    ],
    [
      'inspections is missing',
      'inspections',
      'a value, not rows of inspections',
      'Ask whether a count is 0, or whether a single value is missing.',
    ],
    [
      'by_station is missing',
      'by_station',
      'a value, not the sheet by_station',
      'Ask whether a count is 0, or whether a single value is missing.',
    ],
    [
      'count(decontaminations where turnaround > 60)',
      'turnaround',
      'a value that is known row by row; some waits are still open',
      'Ask for share_within(wait of rows, limit) or median(wait of rows).',
    ],
  ])('%s', (text, seen, wanted, remedy) => {
    expect(told(text)[0]).toEqual(['wrong-kind', seen, wanted, remedy]);
  });

  test('a date is held against a text that is one, on either side', () => {
    const remedy = 'Write year, month and day: "2025-05-01".';
    for (const text of [
      'opening < "2025-02-30"',
      '"2025-02-30" < opening',
      'opening between "2025-02-30" and "2025-03-01"',
    ]) {
      expect(told(text)).toEqual([['not-a-date', '2025-02-30', 'a date that the calendar has', remedy]]);
    }
    expect(told('"2025-03-01" < opening')).toEqual([]);
  });

  test('a text that a coded field cannot hold is told with what it may hold', () => {
    const wanted = 'one of the values that the field may have: South, North, East';
    const count = (condition: string, of = 'inspections') => told(`count(${of} where ${condition})`);
    expect(count('station is "Nort"')).toEqual([['unknown-code', 'Nort', wanted, 'Did you mean `North`?']]);
    expect(count('"Nort" is station')).toEqual([['unknown-code', 'Nort', wanted, 'Did you mean `North`?']]);
    expect(count('station is "Zzzzzz"')).toEqual([
      ['unknown-code', 'Zzzzzz', wanted, 'Write one of the field’s values, in double quotes.'],
    ]);
    expect(count('station is place')).toEqual([
      ['unknown-code', 'place', wanted, 'Give `place` one of these values: it is “Zzzzzz”.'],
    ]);
    expect(count('shade is "zzzzzz"', 'visits')[0]![2]).toBe(
      'one of the values that the field may have, such as a, b, c, d, e, f, g, h',
    );
    expect(count('tint is "zzzzzz"', 'visits')[0]![2]).toBe(
      'one of the values that the field may have: a, b, c, d, e, f, g, h',
    );
    expect(count('station is "North" and station is lower_case("North") and station is outcome')).toEqual([]);
    expect(count('station in ("North", "Nort")').map(([, seen]) => seen)).toEqual(['Nort']);
  });

  test('units are compared where neither number is written out', () => {
    expect(placed('limit > wage')).toEqual([['units-differ', 6]]);
    expect(placed('limit > 3')).toEqual([]);
    expect(placed('3 > limit')).toEqual([]);
    expect(placed('limit in (3, wage)')).toEqual([['units-differ', 6]]);
    expect(placed('limit not between wage and 3')).toEqual([['units-differ', 6]]);
  });

  test('what a formula gives is known before its value is', () => {
    const kinds = new Map([...known].map(([name, value]) => [name, kindOfValue(value)]));
    const kindOf = (text: string) => checkFormula(read(text), { book: withVisits, known: kinds, sheet: null }).kind;
    const anyText = { kind: 'text', codes: null, text: null };
    expect(kindOf('if(1 < 2, "a", "b")')).toEqual(anyText);
    expect(kindOf('"a"')).toEqual({ ...anyText, text: 'a' });
    expect(kindOf('lower_case("A")')).toEqual(anyText);
    for (const text of ['opening', 'opening + 2', 'if(1 < 2, opening, opening)', 'earliest(day of inspections)']) {
      expect(kindOf(text)).toEqual({ kind: 'date' });
    }
    for (const text of ['inspections', 'inspections where length_ft > 3', 'full']) {
      expect(kindOf(text)).toEqual({ kind: 'rows', table: 'inspections' });
    }
    for (const text of [
      '1 < 2',
      'not 1 < 2',
      '1 < 2 and 2 < 3',
      '3 in (1, 2)',
      '3 between 1 and 2',
      'limit is missing',
    ]) {
      expect(kindOf(text)).toEqual({ kind: 'truth' });
    }
    expect(kindOf('typical of by_station for "North"')).toEqual(kindOf('mean(length_ft of inspections)'));
    expect(kindOf('-limit')).toEqual(kindOf('limit'));
    expect(kindOf('3')).toEqual({ kind: 'number', unit: [] });
    expect(kindOf('limit / limit')).toEqual({ kind: 'number', unit: [] });
    expect(kindOf('if(1 < 2, limit, 3)')).toEqual(kindOf('limit'));
    expect(kindOf('opening - opening')).toEqual(kindOf('days_between(opening, opening)'));
  });

  test('what a function is given must be sound before anything is said of all of it', () => {
    const codes = (text: string) => problemsOf(text, environment).map(({ code }) => code);
    expect(codes('quantile(nothing_here of inspections, 1.5)')).toEqual(['unknown-field']);
    expect(codes('share_within(nothing_here of decontaminations, wage)')).toEqual(['unknown-field']);
    expect(codes('min(nothing_here, limit, wage)')).toEqual(['unknown-name']);
    expect(codes('rate(nothing_here, limit)')).toEqual(['unknown-name']);
    expect(codes('running_sum(inspected / 2 of by_station)')).toEqual(['not-this-sheet']);
    expect(codes('joined("a", nothing_here) is 3')).toEqual(['unknown-name']);
    expect(problemsOf('if(1 < 2, "a", 3) is 3', environment)).toHaveLength(1);
    expect(problemsOf('-first_known(opening, "a")', environment)).toHaveLength(1);
  });

  test('a part that failed is not forgotten because a condition stands around it', () => {
    const kindOf = (text: string) =>
      checkFormula(read(text), { book: smallBook, known: new Map(), sheet: null }).kind.kind;
    expect([kindOf('nothing_here is missing'), kindOf('3 is missing'), kindOf('not (nothing_here > 3)')]).toEqual([
      'unknown',
      'truth',
      'unknown',
    ]);
  });
});

describe('rows and names', () => {
  test('without a table there must be a group', () => {
    expect(told('count()')).toEqual([
      [
        'no-group',
        'count()',
        'the rows, because outside a sheet there is no group',
        'Name a table or a selection: count(inspections where …).',
      ],
    ]);
    const here = '`here` means the rows that agree with a sheet’s group; leave it out.';
    expect(told('count(inspections here)')).toEqual([['no-group', 'inspections', 'a sheet around `here`', here]]);
    expect(told('count(spending here)', inSheet)).toEqual([
      [
        'unknown-field',
        'spending',
        'a table that has the sheet’s key station',
        'Group by fields that spending has too, or count all its rows without `here`.',
      ],
    ]);
    expect(told('count(full here)', inSheet)).toEqual([]);
  });

  test.each([
    ['count(limit)', 'wrong-kind', 'limit', 'a table or a selection, not a number in hours', 'Name the rows to count.'],
    ['count(inspektions)', 'unknown-name', 'inspektions', 'a table or a selection', 'Did you mean `inspections`?'],
    ['count(ful)', 'unknown-name', 'ful', 'a table or a selection', 'Did you mean `full`?'],
    [
      'count(qqqqqqqq)',
      'unknown-name',
      'qqqqqqqq',
      'a table or a selection',
      'The tables are inspections, station_days, decontaminations, spending, visits.',
    ],
    [
      'count(inspections where outcom is "a")',
      'unknown-field',
      'outcom',
      'a field of inspections, an input or a figure',
      'Did you mean `outcome`?',
    ],
    [
      'count(inspections where limi is 3)',
      'unknown-field',
      'limi',
      'a field of inspections, an input or a figure',
      'Did you mean `limit`?',
    ],
    [
      'count(inspections where qqqqqqqq is 3)',
      'unknown-field',
      'qqqqqqqq',
      'a field of inspections, an input or a figure',
      'Put a text in double quotes, or name one of the fields.',
    ],
    ['limi + 1', 'unknown-name', 'limi', 'an input, figure, selection or table', 'Did you mean `limit`?'],
    ['quantle + 1', 'unknown-name', 'quantle', 'an input, figure, selection or table', 'Did you mean `quantile`?'],
    [
      'qqqqqqqq',
      'unknown-name',
      'qqqqqqqq',
      'an input, figure, selection or table',
      'Declare it as an input or a figure, or put a text in double quotes.',
    ],
    [
      'length_ft of inspections',
      'field-alone',
      'length_ft of inspections',
      'one value, not one for each row',
      'Put it into a function: sum(… of …), median(… of …).',
    ],
    [
      'by_station where inspected > 2',
      'wrong-kind',
      'by_station where inspected > 2',
      'records, not rows of a sheet',
      'Count the rows of the sheet, or sum one of its columns: sum(inspected of by_station).',
    ],
    [
      'inspected of by_statio for "North"',
      'unknown-sheet',
      'by_statio',
      'a sheet before `for`',
      'Did you mean `by_station`?',
    ],
    [
      'inspected of limit for "North"',
      'unknown-sheet',
      'limit',
      'a sheet before `for`, not a number in hours',
      'The sheets are by_station.',
    ],
    [
      'qqqqqqqq of by_station for "North"',
      'unknown-column',
      'qqqqqqqq',
      'a column of the sheet by_station',
      expect.stringMatching(/^Its columns are .*inspected, typical, name, first_day\.$/),
    ],
    [
      'inspected of by_station for ("North", 2)',
      'wrong-arguments',
      'inspected of by_station for ("North", 2)',
      'a value for each key of by_station: station',
      'Write inspected of by_station for station.',
    ],
    ['inspected of by_station for "Nort"', 'unknown-code', 'Nort', expect.any(String), 'Did you mean `North`?'],
    [
      'sum(typical / 2 of by_station)',
      'wrong-kind',
      'typical / 2',
      'the name of a column of by_station before `of`',
      'Make the calculation a column of its own.',
    ],
    [
      'distinct(name of by_station)',
      'wrong-kind',
      'name of by_station',
      'records: distinct does not work on the rows of a sheet',
      expect.stringMatching(/^An example: distinct\(/),
    ],
  ])('%s is told as %s', (text, ...expected) => {
    expect(told(text)).toEqual([expected]);
  });

  test('what failed before says nothing more, and neither does what stands on it', () => {
    for (const text of [
      'count(failed)',
      'inspected of failed for "North"',
      'failed + 1',
      'count(failed where x is 3)',
    ]) {
      expect(told(text)).toEqual([]);
    }
    const once = (text: string, where = environment) => problemsOf(text, where).map(({ code }) => code);
    expect(once('count(qqqqqqqq here)', inSheet)).toEqual(['unknown-name']);
    expect(once('count(inspektions where outcome is "x")')).toEqual(['unknown-name']);
    expect(once('inspektions where length_ft > 3')).toEqual(['unknown-name']);
  });

  test('rows may be the group’s alone, and an input is the same for each of them', () => {
    expect(told('where length_ft > 20', inSheet)).toEqual([]);
    expect(askNumber('where length_ft > 20', inSheet).value).toBe(1);
    expect(told('sum(limit)', inSheet)).toEqual([]);
    expect(askNumber('sum(limit)', inSheet)).toMatchObject({ value: 6, unit: 'hours' });
    expect(told('count(limi)')[0]![3]).toMatch(/^The tables are inspections, /);
  });

  test('a sheet that is not there, and one of several keys', () => {
    expect(told('inspected of by_statio for "North"', environmentOf(smallBook))[0]![3]).toBe(
      'Declare the sheet with a sentence.',
    );
    const season = smallBook.tables.get('inspections')!.fields.get('season')!;
    const two = sheetValue(
      'two',
      { fields: [field, season], rows: [['North', 2025]] },
      new Map([['amount', column('3')]]),
    );
    const withTwo = environmentOf(smallBook, new Map([['two', two]]));
    expect(told('amount of two for "North"', withTwo)).toEqual([
      [
        'wrong-arguments',
        'amount of two for "North"',
        'a value for each key of two: station, season',
        'Write amount of two for (station, season).',
      ],
    ]);
    expect(told('amount of two for ("North", 2025)', withTwo)).toEqual([]);
  });

  test('in a sheet a field alone is told how to be one value for the group', () => {
    expect(told('length_ft', inSheet)).toEqual([
      [
        'field-alone',
        'length_ft',
        'one value for the group',
        'A field has a value a row: write what is wanted of the group, such as sum(length_ft).',
      ],
    ]);
    expect(told('qqqqqqqq', inSheet)[0]!.slice(0, 3)).toEqual([
      'unknown-name',
      'qqqqqqqq',
      'a column, key, input, figure or table',
    ]);
    expect(told('statio', inSheet)[0]![3]).toBe('Did you mean `station`?');
  });
});

describe('a figure with other inputs', () => {
  const made = new Map([
    ['cost', { formula: read('wage * 10'), needs: ['wage'] }],
    ['shown', { formula: read('cost + wage * 2'), needs: ['cost', 'wage'] }],
    ['since', { formula: read('count(inspections where day >= opening)'), needs: ['opening'] }],
    ['chosen', { formula: read('inspections where minutes > limit'), needs: ['limit'] }],
    ['filled', { formula: null, needs: ['wage'] }],
    ['on_sheet', { formula: read('wage * 3'), needs: ['filled', 'wage'] }],
    ['span', { formula: read('limit * 2'), needs: ['limit'] }],
    ['after', { formula: read('opening + 1'), needs: ['opening'] }],
    ['last', { formula: read('latest(day of inspections where day <= opening)'), needs: ['opening'] }],
    ['counted', { formula: read('count(inspections where extent is how)'), needs: ['how'] }],
    ['again', { formula: read('1 + (cost with wage as 2)'), needs: ['cost', 'wage'] }],
  ]);
  const values = new Map(known)
    .set('thirty', input('30', 'minutes'))
    .set('how', input('full'))
    .set('cots', input('1'))
    .set('filed', input('1'));
  for (const name of ['cost', 'shown', 'since', 'chosen', 'on_sheet', 'counted', 'span', 'after', 'last']) {
    values.set(name, valueOfFormula(made.get(name)!.formula!.text, environmentOf(smallBook, values)));
  }
  values.set('filled', byStation).set('again', values.get('cost')!);
  const inputs = new Set(['wage', 'limit', 'opening', 'place', 'how']);
  const withFigures = { ...environmentOf(smallBook, values), definitions: { inputs, made, values } };

  test('is made again from all that the inputs reach, in the input’s unit', () => {
    const asked = (text: string) => askNumber(text, withFigures);
    expect(asked('cost with wage as 30')).toMatchObject({ value: 300, unit: 'dollars an hour' });
    expect(asked('shown with wage as 30').value).toBe(360);
    expect(asked('cost with wage as (wage * 2)').value).toBe(400);
    expect(asked('cost with wage as -1').value).toBe(-10);
    expect(asked('shown').value).toBe(240);
    // Inspections on 2025-05-02: three, of which the last has no day; on the day before four.
    expect(asked('since with opening as "2025-05-02"').value).toBe(3);
    expect(asked('since with opening as (opening + 1)').value).toBe(3);
    expect(asked('since').value).toBe(7);
    // 30 minutes are half an hour, and days since 1970-01-01 of 2025-06-02 are 20,241 (`date -u -d 2025-06-02 +%s` / 86,400).
    expect(asked('span with limit as thirty')).toMatchObject({ value: 1, unit: 'hours' });
    expect(valueOfFormula('after with opening as "2025-06-01"', withFigures)).toMatchObject({
      kind: 'date',
      day: 20241,
    });
    // Seven were full; the other was a paper check.
    expect([asked('counted').value, asked('counted with how as "paper check"').value]).toEqual([7, 1]);
  });

  test('that is refused says nothing more', () => {
    const codes = (text: string, where = withFigures as typeof environment) =>
      problemsOf(text, where).map(({ code }) => code);
    expect(codes('(cost with limit as 2) is "a"')).toEqual(['no-effect']);
    expect(codes('(on_sheet with wage as 2) is "a"')).toEqual(['not-again']);
    expect(codes('cost with wage as 3 with wge as 4')).toEqual(['not-an-input']);
    expect(codes('wage with wage as 3', environment)).toEqual(['not-a-figure', 'not-an-input']);
    expect(told('cots with wage as 3', withFigures as typeof environment)[0]![3]).toBe('Did you mean `cost`?');
    expect(told('filed with wage as 3', withFigures as typeof environment)[0]![3]).toBe(
      'Make the formula a figure and name that.',
    );
  });

  test('a count of its records says with which inputs it was made', () => {
    const value = valueOfFormula('since with opening as "2025-05-02"', withFigures);
    if (value.kind !== 'number') throw new Error(value.kind);
    const last = valueOfFormula('last with opening as "2025-05-02"', withFigures);
    expect(last).toMatchObject({
      kind: 'date',
      accounts: [{ description: expect.stringMatching(/, with opening as "2025-05-02"$/) }],
    });
    expect(value.accounts.map(({ description }) => description.endsWith(', with opening as "2025-05-02"'))).toEqual([
      true,
    ]);
  });

  test.each([
    [
      'cost with wage as "x"',
      'wrong-kind',
      'x',
      'a number in dollars an hour, not a text',
      'Give the input the same kind of value as it has.',
    ],
    ['cost with wage as limit', 'units-differ', 'limit', expect.any(String), expect.any(String)],
    [
      'since with opening as "2025-02-30"',
      'not-a-date',
      '2025-02-30',
      'a date that the calendar has',
      expect.any(String),
    ],
    [
      'since with opening as 3',
      'wrong-kind',
      '3',
      'a date, because that is what it is compared with',
      'Compare like with like.',
    ],
    [
      'cost with opening as "2025-05-02"',
      'no-effect',
      'opening',
      'an input that cost stands on',
      'Leave it out: cost is the same whatever opening is.',
    ],
    [
      'cost with wage as 3 with limit as 2',
      'no-effect',
      'limit',
      'an input that cost stands on',
      'Leave it out: cost is the same whatever limit is.',
    ],
    [
      'wage with wage as 3',
      'not-a-figure',
      'wage',
      'a figure of this notebook before `with`',
      'Make the formula a figure and name that.',
    ],
    [
      'chosen with limit as 2',
      'not-a-figure',
      'chosen',
      'a figure of this notebook before `with`',
      'Count or sum its rows in a figure, and name that.',
    ],
    [
      'filled with wage as 2',
      'not-a-figure',
      'filled',
      'a figure of this notebook before `with`',
      'Count or sum its rows in a figure, and name that.',
    ],
    ['cost with cost as 3', 'not-an-input', 'cost', 'an input after `with`', 'Declare it in a table of inputs.'],
    ['cost with wge as 3', 'not-an-input', 'wge', 'an input after `with`', 'Did you mean `wage`?'],
    [
      'on_sheet with wage as 3',
      'not-again',
      'on_sheet',
      'a figure that stands on no sheet: filled is filled once',
      'Write its formula without it.',
    ],
    [
      'again with wage as 3',
      'not-again',
      'again',
      'a figure that is made without `with`, unlike again',
      'Write its formula without it.',
    ],
    ['nothing_here with wage as 3', 'unknown-name', 'nothing_here', expect.any(String), expect.any(String)],
    ['cost with wage as nothing_here', 'unknown-name', 'nothing_here', expect.any(String), expect.any(String)],
  ])('%s is told as %s', (text, ...expected) => {
    expect(told(text, withFigures as typeof environment)).toEqual([expected]);
  });
});
