import { describe, expect, test } from 'vitest';
import { sheetValue } from '../../src/formula/sheet/sheet-value.js';
import { askNumber, environmentOf, problemsOf } from './ask.js';
import { column, environment, field, inSheet, told } from './check-book.js';
import { smallBook } from './small-book.js';

// What is expected follows from the rules of the language: a mistake is told once, at its place.

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
