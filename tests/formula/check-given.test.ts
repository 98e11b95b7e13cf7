import { describe, expect, test } from 'vitest';
import { inSheet, placed, told } from './check-book.js';

// What is expected follows from the rules of the language: a mistake is told once, at its place.

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
