import { describe, expect, test } from 'vitest';
import { checkFormula } from '../../src/formula/check.js';
import { kindOfValue } from '../../src/formula/value/kind-of-value.js';
import { problemsOf, read } from './ask.js';
import { environment, known, placed, told, withVisits } from './check-book.js';
import { smallBook } from './small-book.js';

// What is expected follows from the rules of the language: a mistake is told once, at its place.

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
