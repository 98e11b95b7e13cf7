import { describe, expect, test } from 'vitest';
import { inputValue } from '../../src/formula/input-value.js';
import { accountOf, type Evaluated } from '../../src/formula/value/evaluated.js';
import { ask, askNumber, environmentOf, problemsOf, valueOfFormula } from './ask.js';
import { book, dates, firstOfMay, smallBook, table, texts } from './small-book.js';

const at = { file: 'season.md', line: 3, column: 9 };

function input(value: string, unit = ''): Evaluated {
  const found = inputValue(value, unit, { value: at, unit: { ...at, column: 40 } });
  if (!('kind' in found)) throw new Error(found.problems[0]!.wanted);
  return found;
}

const known = new Map([
  ['price', input('40,000', 'dollars')],
  ['life', input('15', 'years')],
  ['discount', input('8', 'percent')],
  ['saved', input('5,000', 'dollars')],
  ['never', input('0', 'dollars')],
  ['limit', input('1.5', 'hours')],
  ['short', input('30', 'minutes')],
]);
const environment = environmentOf(smallBook, known);

/** What was wrong with a formula: code and offset of each problem. */
const wrong = (text: string) => problemsOf(text, environment).map(({ code, place }) => [code, place.column! - 5]);

describe('a price spread over the years', () => {
  test('is paid by its yearly amounts, each discounted to today', () => {
    const { value, unit } = askNumber('yearly_cost(price, life, discount)', environment);
    const paid = Array.from({ length: 15 }, (_, year) => value! / 1.08 ** (year + 1)).reduce(
      (sum, one) => sum + one,
      0,
    );
    expect(paid).toBeCloseTo(40_000, 6);
    expect(unit).toBe('dollars');
    expect(askNumber('yearly_cost(price, 8, 0)', environment).value).toBe(5000);
  });

  test('is broken even with after the years it was spread over', () => {
    const found = askNumber('years_to_break_even(price, yearly_cost(price, life, discount), discount)', environment);
    expect(found.value).toBeCloseTo(15, 9);
    expect(found.unit).toBe('years');
    expect(askNumber('years_to_break_even(price, saved, 0)', environment).value).toBe(8);
  });

  test('has no answer for no life, and none where what is saved never pays it', () => {
    expect(askNumber('yearly_cost(price, 0, discount)', environment)).toMatchObject({
      value: null,
      why: 'the life must be above 0, and the discount above −1',
    });
    expect(askNumber('years_to_break_even(price, never, discount)', environment)).toMatchObject({
      value: null,
      why: 'what is saved in a year never pays it',
    });
  });

  test.each([
    ['yearly_cost(price, saved, discount)', [['units-differ', 19]]],
    ['yearly_cost(price, life, life)', [['units-differ', 25]]],
    ['years_to_break_even(price, life, discount)', [['units-differ', 27]]],
    ['years_to_break_even(price, saved, saved)', [['units-differ', 34]]],
    ['yearly_cost(40000, 15, 0.08)', []],
    ['years_to_break_even(price, 5000, 0.08)', []],
  ])('takes numbers written out in any place, and told units in theirs: %s', (text, expected) => {
    expect(wrong(text)).toEqual(expected);
  });
});

test('a life in another unit than years is told the unit it wants', () => {
  expect(problemsOf('yearly_cost(price, limit, discount)', environment)[0]).toMatchObject({ wanted: 'years' });
});

describe('functions of single values', () => {
  test.each([
    ['min(limit, short)', 0.5, 'hours'],
    ['max(limit, short, 2)', 2, 'hours'],
    ['min(short, limit)', 30, 'minutes'],
    ['abs(short - limit)', 60, 'minutes'],
    ['first_known(1 / 0, 1 / 0, 3)', 3, ''],
    ['if(limit > short, limit, short)', 1.5, 'hours'],
    ['if(limit < short, limit, short)', 0.5, 'hours'],
  ])('%s is %d %s', (text, value, unit) => {
    expect(askNumber(text, environment)).toMatchObject({ value, unit });
  });

  test.each([
    ['min(1 / 0, 3)', 'it would be divided by zero'],
    ['if(1 / 0 > 1, 1, 2)', 'it would be divided by zero'],
    ['abs(1 / 0)', 'it would be divided by zero'],
    ['mean(length_ft of inspections where season is 1999)', 'no row has the field'],
    ['median(length_ft of inspections where season is 1999)', 'no row has the field'],
    ['lowest(length_ft of inspections where season is 1999)', 'no row has the field'],
    ['quantile(length_ft of inspections, 1 - 1)', 'the share asked for does not lie between 0 and 1'],
    ['quantile(length_ft of inspections, 0.5 + 0.5)', 'the share asked for does not lie between 0 and 1'],
    ['quantile(length_ft of inspections, 1 / 0)', 'the share asked for does not lie between 0 and 1'],
  ])('%s is missing because %s', (text, why) => {
    expect(askNumber(text, environment)).toMatchObject({ value: null, why, interval: null });
  });

  test('a share asked for that is none leaves the unit of what it was asked of', () => {
    expect(askNumber('quantile(length_ft of inspections, 1 + 1)').unit).toBe('feet');
    expect(askNumber('quantile(turnaround of decontaminations, 1 + 1)').unit).toBe('minutes');
  });

  test.each([
    [2025, 13, 1],
    [2025, 0, 1],
    [2025, 5, 32],
    [2025, 5, 1.5],
    [2025.5, 5, 1],
    [20250, 5, 1],
  ])('date_of(%d, %d, %d) is no day', (...parts) => {
    expect(ask(`date_of(${parts.join(', ')})`).kind).toBe('missing');
  });

  test('the parts of a date are those of the calendar, in years before 1970 as well', () => {
    // 1969-12-31 was a Wednesday, 0099-03-01 a Sunday of the proleptic calendar: `date -u -d`, GNU coreutils.
    expect(ask('weekday_of("1969-12-31")')).toEqual({ kind: 'text', text: 'Wednesday' });
    expect(ask('weekday_of(date_of(99, 3, 1))')).toEqual({ kind: 'text', text: 'Sunday' });
    expect(ask('month_of("1968-02-29")')).toEqual({ kind: 'text', text: 'February' });
    expect(ask('month_of("1969-12-31")')).toEqual({ kind: 'text', text: 'December' });
    expect(askNumber('day_of_month("1968-02-29") + year_of("1968-02-29")').value).toBe(29 + 1968);
  });

  test.each([
    ['quantile(length_ft of inspections, 0)', [['out-of-range', 35]]],
    ['quantile(length_ft of inspections, 1)', [['out-of-range', 35]]],
    ['quantile(length_ft of inspections, limit)', [['units-differ', 35]]],
    ['rate(mean(contact_temp_f of decontaminations), 3)', [['units-differ', 5]]],
    ['rate(3, mean(contact_temp_f of decontaminations))', [['units-differ', 8]]],
    ['distinct(turnaround of decontaminations)', [['wrong-kind', 9]]],
  ])('%s is a problem', (text, expected) => {
    expect(wrong(text)).toEqual(expected);
  });
});

describe('functions row by row', () => {
  // Minutes 4, 30, 6, 2, 45, missing, 8, 5 and lengths 10, 20, 30, missing, 20, 20, 40, 50 of the small book.
  test.each([
    ['sum(abs(minutes - short) of inspections)', 26 + 0 + 24 + 28 + 15 + 22 + 25],
    ['sum(min(minutes, 10) of inspections)', 4 + 10 + 6 + 2 + 10 + 8 + 5],
    ['sum(max(minutes, 10, 6) of inspections)', 10 + 30 + 10 + 10 + 45 + 10 + 10],
    ['sum(min(limit, minutes) of inspections)', (4 + 30 + 6 + 2 + 45 + 8 + 5) / 60],
    ['sum(if(length_ft > 20, 1, 0) of inspections)', 3],
    ['count(inspections where if(length_ft > 20, minutes, 0) > 4)', 3],
    ['sum(first_known(minutes, 100) of inspections)', 200],
    ['sum(first_known(length_ft, length_ft, 7) of inspections)', 197],
    ['sum(-length_ft of inspections)', -190],
    ['sum(length_ft / (length_ft - lowest(length_ft of inspections)) of inspections)', 2 + 1.5 + 2 + 2 + 4 / 3 + 1.25],
    ['highest(year_of(day) of inspections)', 2025],
    ['distinct(day of inspections)', 2],
    ['distinct(length_ft of inspections)', 5],
    ['distinct(upper_case(craft) of inspections)', 5],
    ['sum(day_of_month(day + 40) of inspections)', 4 * 10 + 3 * 11],
  ])('%s', (text, value) => {
    expect(askNumber(text, environment).value).toBeCloseTo(value, 9);
  });

  test('rows that lack the field are told as skipped, whatever is taken of it', () => {
    const skipped = (text: string) => accountOf(valueOfFormula(text, environment)).map((one) => one.skippedMissing);
    expect(skipped('sum(minutes of inspections)')).toEqual([1]);
    expect(skipped('distinct(craft of inspections)')).toEqual([1]);
    expect(skipped('distinct(season of inspections)')).toEqual([0]);
    expect(skipped('listed(craft of inspections)')).toEqual([1]);
    expect(skipped('earliest(day of inspections)')).toEqual([1]);
    expect(skipped('latest(day of inspections where season is 2024)')).toEqual([0]);
    expect(skipped('highest(length_ft of inspections where station is "North")')).toEqual([1]);
    expect(skipped('median(turnaround of decontaminations)')).toEqual([1]);
  });

  test('texts are listed in natural order, and no more than forty of them', () => {
    const names = Array.from({ length: 43 }, (_, lake) => `Lake ${43 - lake}`);
    const lakes = (count: number) =>
      environmentOf(
        book([table('seen', 'looks', [texts('lake', [null, ...names.slice(43 - count), 'Lake 1'])], null)], []),
      );
    const forty = Array.from({ length: 40 }, (_, lake) => `Lake ${lake + 1}`).join(', ');
    expect(ask('listed(lake of seen)', lakes(40))).toEqual({ kind: 'text', text: forty });
    expect(ask('listed(lake of seen)', lakes(43))).toEqual({ kind: 'text', text: `${forty} and 3 more` });
  });

  test('the earliest and latest are those of the rows that have a date', () => {
    const seen = environmentOf(
      book([table('seen', 'looks', [dates('day', [firstOfMay + 3, null, firstOfMay, firstOfMay + 9])], null)], []),
    );
    expect(ask('earliest(day of seen)', seen)).toEqual({ kind: 'date', day: firstOfMay });
    expect(ask('latest(day of seen)', seen)).toEqual({ kind: 'date', day: firstOfMay + 9 });
  });
});
