import { describe, expect, test } from 'vitest';
import { inputValue } from '../../src/formula/input-value.js';
import { unitOf } from '../../src/formula/unit/unit.js';
import { unitWord } from '../../src/formula/unit/word.js';
import type { Evaluated, IntervalFound, NumberValue } from '../../src/formula/value/evaluated.js';
import { unseenPart } from '../../src/formula/value/lift.js';
import { givenNumber } from '../../src/formula/value/number.js';
import { calendarDay } from '../../src/formula/value/plain-value.js';
import { scaledInterval } from '../../src/formula/value/scaled-interval.js';
import { ask, askNumber, environmentOf, problemsOf, valueOfFormula } from './ask.js';
import { book, dates, firstOfMay, numbers, smallBook, table, texts, waits } from './small-book.js';

/** So many station-days of ten looks each, of which a number that goes round with the day find something. */
function looks(days: number) {
  const day = Array.from({ length: days * 10 }, (_, row) => Math.floor(row / 10));
  const found = day.map((of, row) => (row % 10 < (of * 7) % 4 ? 'yes' : 'no'));
  const minutes = day.map((of, row) => 3 + ((row * 17 + of * 5) % 40));
  const season = day.map((of) => (of % 2 === 0 ? 2024 : 2025));
  const filled = [texts('found', found), numbers('minutes', 'minutes', minutes), numbers('season', null, season)];
  const given = table('spending', 'entries', [numbers('amount', 'dollars', [90, 10])], null);
  return environmentOf(
    book(
      [table('looked', 'looks', filled, day), given],
      Array.from({ length: days }, () => 0),
    ),
  );
}

const many = looks(40);
const at = { file: 'season.md', line: 3, column: 9 };
const minutes = unitOf(unitWord('minutes')!);
const found = 'count(looked where found is "yes")';
const share = `share(${found}, count(looked))`;

describe('an interval that is scaled', () => {
  const of = (low: number | null, high: number | null, sides: 'two' | 'upper' | 'lower'): IntervalFound => ({
    interval: { low, high, confidence: 0.95, sides, method: 'm' },
    why: null,
    cautions: ['c'],
  });

  test('is turned round where the factor is below 0, one-sided ones too, and an open end stays open', () => {
    expect(scaledInterval(of(1, 3, 'two'), 2, 10)).toEqual(of(12, 16, 'two'));
    expect(scaledInterval(of(1, 3, 'two'), -2, 10)).toEqual(of(4, 8, 'two'));
    expect(scaledInterval(of(0, 3, 'upper'), -1, 0).interval).toMatchObject({ low: -3, sides: 'lower' });
    expect(scaledInterval(of(2, 9, 'lower'), -1, 0).interval).toMatchObject({ low: -9, high: -2, sides: 'upper' });
    expect(scaledInterval(of(1, null, 'two'), 2, 0)).toEqual(of(2, null, 'two'));
    expect(scaledInterval(of(1, null, 'two'), -2, 0)).toEqual(of(null, -2, 'two'));
  });

  test('by nothing, or beyond what is a number, is none and says so', () => {
    const none = { interval: null, why: 'a multiple of 0 has no interval', cautions: ['c'] };
    for (const [factor, shift] of [
      [0, 1],
      [Number.POSITIVE_INFINITY, 1],
      [Number.NaN, 1],
      [1, Number.NEGATIVE_INFINITY],
    ] as const) {
      expect(scaledInterval(of(1, 3, 'two'), factor, shift)).toEqual(none);
    }
    const without = { interval: null, why: 'w', cautions: [] };
    expect(scaledInterval(without, 2, 1)).toBe(without);
  });
});

describe('a share that is only scaled or shifted by what is given keeps its own limits', () => {
  const exact = askNumber(share, many).interval!;

  test.each([
    [`${share} / 4`, 0.25, 0],
    [`${share} - 0.01`, 1, -0.01],
    [`0.5 + ${share}`, 1, 0.5],
    [`-(${share})`, -1, 0],
    [`3 - 2 * ${share}`, -2, 3],
  ])('%s', (text, factor, shift) => {
    const { interval } = askNumber(text, many);
    const ends = [exact.low! * factor + shift, exact.high! * factor + shift].sort((a, b) => a - b);
    expect(interval!.method).toBe(exact.method);
    expect(interval!.low).toBeCloseTo(ends[0]!, 12);
    expect(interval!.high).toBeCloseTo(ends[1]!, 12);
  });

  test.each([`1 / (${share})`, `${share} * ${share}`, `${share} / count(looked) * count(looked)`])(
    '%s does not, and is resampled',
    (text) => {
      expect(askNumber(text, many).interval!.method).toMatch(/^percentile limits/);
    },
  );

  test('nothing of it is left where it is taken no times', () => {
    expect(askNumber(`0 * ${share}`, many)).toMatchObject({
      value: 0,
      interval: null,
      why: 'a multiple of 0 has no interval',
    });
  });

  test('a missing factor leaves neither a value nor an interval', () => {
    expect(askNumber(`${share} * (1 / 0)`, many)).toMatchObject({
      value: null,
      interval: null,
      why: 'it would be divided by zero',
    });
  });
});

describe('what a number stands on', () => {
  test('sums of counts rest on all they count, so that two small ones together can be enough', () => {
    const few = (season: number) => `count(looked where minutes > 39 and season is ${season})`;
    const counts = [2024, 2025].map((season) => askNumber(few(season), many).value!);
    const small = environmentOf(
      book(
        [table('looked', 'looks', [numbers('n', null, [1, 1, 1, 2, 2, 2])], [0, 1, 2, 3, 4, 5])],
        [0, 0, 0, 0, 0, 0],
      ),
    );
    const part = (n: number) => `count(looked where n is ${n})`;
    expect(askNumber(`${part(1)} / count(looked where n < 3)`, small).why).toMatch(/3 records/);
    expect(askNumber(`(${part(1)} + ${part(2)}) / count(looked)`, small).why).toBe('it is the same in every resample');
    expect(counts.every((count) => count > 0)).toBe(true);
  });

  test('a single record is named as one', () => {
    const one = `count(looked where minutes is ${3} and season is 2024)`;
    const rows = askNumber(one, looks(1)).value;
    expect(rows).toBe(1);
    expect(askNumber(`${one} / mean(minutes of looked)`, looks(2)).why).toMatch(/it rests on a single record/);
  });

  test('resamples of fewer than twenty station-days carry the caution, and those of twenty do not', () => {
    const cautions = (days: number) => askNumber('mean(minutes of looked)', looks(days)).cautions;
    expect(cautions(19)).toEqual(['under 20 station-days']);
    expect(cautions(20)).toEqual([]);
  });

  test('an estimate of rows that belong to no station-day has no interval, nor has what is made of it', () => {
    expect(askNumber('mean(amount of spending)', many)).toMatchObject({
      value: 50,
      interval: null,
      why: 'its rows belong to no station-day, so that nothing can be resampled',
    });
    expect(askNumber('mean(amount of spending) * 2', many)).toMatchObject({
      value: 100,
      interval: null,
      why: unseenPart,
    });
  });

  test('a census by what is given is a census, by what is counted an estimate, and a count by records is one', () => {
    const known = new Map<string, Evaluated>([['hours', givenNumber(8)]]);
    const standing = (text: string) => (valueOfFormula(text, { ...many, known }) as NumberValue).standing;
    expect(standing('hours * 2')).toBe('given');
    expect(standing('count(looked) / hours')).toBe('census');
    expect(standing('hours / count(looked)')).toBe('estimate');
    expect(standing('count(looked) / count(spending)')).toBe('estimate');
    expect(standing('sum(amount of spending) / hours')).toBe('census');
    expect(standing('sum(amount of spending) / count(spending)')).toBe('census');
    expect(standing('mean(minutes of looked) * hours')).toBe('estimate');
  });

  test('units of one kind are taken to one another before they are multiplied or divided', () => {
    const unit = (words: string) =>
      inputValue(words.split(' ')[0]!, words.slice(words.indexOf(' ') + 1), { value: at, unit: at }) as Evaluated;
    const known = new Map<string, Evaluated>([
      ['wage', unit('24 dollars an hour')],
      ['short', unit('30 minutes')],
      ['long', unit('1.5 hours')],
    ]);
    const asked = (text: string) => askNumber(text, { ...many, known });
    expect(asked('wage * short')).toMatchObject({ value: 12, unit: 'dollars' });
    expect(asked('short * wage')).toMatchObject({ value: 12, unit: 'dollars' });
    expect(asked('short / long')).toMatchObject({ value: expect.closeTo(1 / 3, 12), unit: '' });
    expect(asked('long / short')).toMatchObject({ value: expect.closeTo(3, 12), unit: '' });
  });

  test('nothing is shown below 0 as −0, and what is too large is missing', () => {
    expect(Object.is(askNumber('0 * -1').value, 0)).toBe(true);
    expect(askNumber(`${'9'.repeat(300)} * ${'9'.repeat(300)}`)).toMatchObject({
      value: null,
      why: 'the result is too large to be a number',
    });
  });
});

describe('the difference of shares that have no station-day in common', () => {
  const of = (season: number, cases = found) =>
    `share(${cases.replace(')', ` and season is ${season})`)}, count(looked where season is ${season}))`;

  test('says when either rests on few station-days', () => {
    const few = askNumber(`${of(2024)} - ${of(2025)}`, looks(30));
    expect(few.interval!.method).toContain('at the effective sizes of station-days');
    expect(few.cautions).toContain('under 20 station-days');
    expect(askNumber(`${of(2024)} - ${of(2025)}`, looks(40)).cautions).not.toContain('under 20 station-days');
  });

  test('says when one of them had no case, so that its trials were taken as independent', () => {
    const none = 'count(looked where found is "never")';
    const said = 'the limits take the trials of one share as independent';
    expect(askNumber(`${of(2024, none)} - ${of(2025)}`, looks(40)).cautions).toContain(said);
    expect(askNumber(`${of(2024)} - ${of(2025, none)}`, looks(40)).cautions).toContain(said);
    expect(askNumber(`${of(2024)} - ${of(2025)}`, looks(40)).cautions).not.toContain(said);
  });

  test('is resampled where they have one, or where one has none at all to compare', () => {
    expect(askNumber(`${of(2024)} - ${share}`, many).interval!.method).toMatch(/^percentile limits/);
    const apart = environmentOf(
      book(
        [
          table('first', 'looks', [texts('found', ['yes', 'no', 'yes', 'no', 'no', 'yes'])], null),
          table(
            'second',
            'looks',
            [
              texts(
                'found',
                Array.from({ length: 60 }, (_, row) => (row % 3 === 0 ? 'yes' : 'no')),
              ),
            ],
            Array.from({ length: 60 }, (_, row) => Math.floor(row / 2)),
          ),
        ],
        Array.from({ length: 30 }, () => 0),
      ),
    );
    const shareOf = (name: string) => `share(count(${name} where found is "yes"), count(${name}))`;
    expect(askNumber(`${shareOf('first')} - ${shareOf('second')}`, apart).interval).toBeNull();
    expect(askNumber(`${shareOf('first')} - ${shareOf('first')}`, apart).interval).toBeNull();
  });

  test('of nothing counted is nothing', () => {
    const nothing = `share(${found.replace(')', ' and season is 1999)')}, count(looked where season is 1999))`;
    expect(askNumber(`${nothing} - ${share}`, many)).toMatchObject({
      value: null,
      interval: null,
      why: 'nothing was counted, so that there is no share',
    });
  });
});

describe('dates', () => {
  test('lie in the years 1 to 9999', () => {
    // `date -u -d 0001-01-01 +%s` and 9999-12-31 by GNU coreutils, divided by 86,400.
    expect([-719_163, -719_162, 2_932_896, 2_932_897].map(calendarDay)).toEqual([null, -719_162, 2_932_896, null]);
    expect([calendarDay(5.9), calendarDay(-0.1), calendarDay(Number.NaN)]).toEqual([5, -1, null]);
  });

  test('are moved by whole days, back as well as on, and by nothing that is missing', () => {
    const unknown = environmentOf(
      smallBook,
      new Map<string, Evaluated>([['unknown_days', givenNumber(null, unitOf(unitWord('days')!), 'w')]]),
    );
    expect(ask('date_of(2025, 5, 3) - 2.5')).toEqual({ kind: 'date', day: firstOfMay - 1 });
    expect(ask('date_of(2025, 5, 1) + unknown_days', unknown)).toMatchObject({ kind: 'missing' });
    expect(ask('date_of(2025, 2, 30) + 1')).toMatchObject({ kind: 'missing' });
    expect(ask('date_of(2025, 2, 30) - date_of(2025, 5, 1)')).toMatchObject({ value: null });
    expect(ask('date_of(2025, 5, 4) - date_of(2025, 5, 1)')).toMatchObject({ value: 3, unit: 'days' });
    expect(problemsOf('date_of(2025, 5, 1) - "2025-04-28"').map(({ code }) => code)).toEqual(['wrong-kind']);
  });

  test('chosen by an estimate make no number with an interval', () => {
    const text =
      'days_between(if(mean(minutes of looked) > 1, date_of(2025, 5, 1), date_of(2025, 5, 2)), date_of(2025, 5, 4))';
    expect(askNumber(text, many)).toMatchObject({ value: 3, interval: null });
    expect(askNumber(text, many).why).toMatch(/a text or date stands between/);
    // By what is counted alone it is a census, which has none to explain.
    expect(askNumber(text.replace('mean(minutes of looked)', 'count(looked)'), many)).toMatchObject({
      value: 3,
      why: null,
    });
  });
});

describe('waits', () => {
  const washes = (endings: readonly (readonly [number, 'ended' | 'open' | 'otherwise' | 'unknown'])[], perDay = 1) => {
    const day = endings.map((_, row) => Math.floor(row / perDay));
    return environmentOf(
      book(
        [table('washed', 'washes', [waits('wait', endings)], day)],
        [...new Set(day)].map(() => 0),
      ),
    );
  };
  const times = Array.from({ length: 24 }, (_, row) => 10 + ((row * 7) % 24));
  const ended = times.map((time) => [time, 'ended'] as const);

  test('are spoken of as they ended, and those that nobody knows of are left out', () => {
    const environment = washes([...ended.slice(0, 20), [40, 'open'], [50, 'open'], [20, 'otherwise'], [0, 'unknown']]);
    const independent = 'the limits take waits as independent of one another';
    const median = askNumber('median(wait of washed)', environment);
    expect(median.cautions).toEqual([
      '2 still open at the cut-off: counted as at least that long',
      '1 ended otherwise, such as by leaving unwashed',
      independent,
    ]);
    expect(askNumber('median(wait of washed)', washes(ended)).cautions).toEqual([independent]);
    expect(askNumber('median(wait of washed)', washes(ended.slice(0, 19))).cautions).toEqual([
      independent,
      'under 20 waits',
    ]);
    // Where some ended otherwise the limits are resampled by station-day.
    expect(askNumber('share_within(wait of washed, 20)', environment).cautions).not.toContain(independent);
  });

  test('of nobody, or followed for too short a time, have no value and say why', () => {
    const none = washes([
      [0, 'unknown'],
      [0, 'unknown'],
    ]);
    expect(askNumber('median(wait of washed)', none)).toMatchObject({ value: null, why: 'no row has the wait' });
    expect(askNumber('share_within(wait of washed, 5)', none)).toMatchObject({
      value: null,
      why: 'no row has the wait',
    });
    const known = new Map<string, Evaluated>([['unknown_limit', givenNumber(null, minutes, 'nobody said')]]);
    const open = washes([
      [5, 'open'],
      [9, 'open'],
    ]);
    expect(askNumber('median(wait of washed)', open)).toMatchObject({
      value: null,
      why: 'too few had ended by the cut-off to reach it',
    });
    expect(askNumber('share_within(wait of washed, 10)', open)).toMatchObject({
      value: null,
      why: 'none was followed for so long',
    });
    expect(askNumber('share_within(wait of washed, unknown_limit)', { ...open, known })).toMatchObject({
      value: null,
      why: 'nobody said',
    });
  });

  test('that all, or none, had ended by a time have a share without limits, and it says so', () => {
    const why = 'all or none had ended by then, so that the curve gives no limits';
    expect(askNumber('share_within(wait of washed, 40)', washes(ended))).toMatchObject({
      value: 1,
      interval: null,
      why,
    });
    expect(askNumber('share_within(wait of washed, 5)', washes(ended))).toMatchObject({
      value: 0,
      interval: null,
      why,
    });
  });

  test('rest on those that had ended: under five of them nothing is resampled', () => {
    const four = washes([
      ...[1, 2, 3, 4].map((time) => [time, 'ended'] as const),
      [5, 'open'],
      [6, 'open'],
      [7, 'open'],
    ]);
    const median = 'median(wait of washed)';
    expect(askNumber(median, four).value).toBe(4);
    expect(askNumber(`${median} * ${median} / ${median}`, four).why).toMatch(/rests on 4 records/);
    const some = washes([...ended, [90, 'otherwise']]);
    const within = (limit: number) => askNumber(`share_within(wait of washed, ${limit})`, some);
    expect(within(13)).toMatchObject({
      value: 4 / 25,
      interval: null,
      why: expect.stringMatching(/rests on 4 records/),
    });
    expect(within(14).interval).not.toBeNull();
  });

  test('whose upper limit is not reached say so, and twenty are not few', () => {
    // Freireich et al. (1963): the median of the 6-MP arm is 23 weeks, from 13 up; R survival, conf.type "log-log".
    const arm = washes([
      ...[6, 6, 6, 7, 10, 13, 16, 22, 23].map((time) => [time, 'ended'] as const),
      ...[6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35].map((time) => [time, 'open'] as const),
    ]);
    const { interval, cautions } = askNumber('median(wait of washed)', arm);
    expect(interval).toMatchObject({ low: 13, high: null });
    expect(cautions).toContain('the upper limit is not reached by the cut-off');
    expect(cautions).not.toContain('under 20 waits');
    expect(askNumber('median(wait of washed)', washes(ended.slice(0, 20))).cautions).not.toContain('under 20 waits');
  });

  test('within an hour are those within sixty minutes', () => {
    const known = new Map<string, Evaluated>([['wished', givenNumber(0.25, unitOf(unitWord('hours')!))]]);
    const environment = { ...washes(ended), known };
    expect(askNumber('share_within(wait of washed, wished)', environment)).toEqual(
      askNumber('share_within(wait of washed, 15)', environment),
    );
  });

  test('made into something else are resampled together, each wait with its station-day', () => {
    const environment = washes(ended, 2);
    const doubled = askNumber('median(wait of washed) * median(wait of washed) / median(wait of washed)', environment);
    expect(doubled.interval!.method).toMatch(/^percentile limits/);
    // 12 station-days of two waits: a resample's median is one of the waits, or the middle of two.
    expect(times.some((time) => Math.abs(2 * doubled.interval!.low! - 2 * time) < 1.01)).toBe(true);
    expect(doubled.interval!.low).toBeGreaterThanOrEqual(10);
    expect(doubled.interval!.high).toBeLessThanOrEqual(33);
  });
});

test('a date field without a date, and dates of rows, are told as missing', () => {
  const empty = environmentOf(book([table('seen', 'looks', [dates('day', [null, null])], null)], []));
  expect(ask('earliest(day of seen)', empty)).toEqual({ kind: 'missing', why: 'no row has the field' });
  expect(ask('latest(day of seen)', empty)).toEqual({ kind: 'missing', why: 'no row has the field' });
});
