import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { inputValue } from '../../src/formula/input-value.js';
import { unitOf } from '../../src/formula/unit/unit.js';
import { unitWord } from '../../src/formula/unit/word.js';
import type { Evaluated, NumberValue } from '../../src/formula/value/evaluated.js';
import { givenNumber } from '../../src/formula/value/number.js';
import { weightedIncidence } from '../../src/formula/value/weighted-incidence.js';
import type { Book } from '../../src/record/book.js';
import { ask, askNumber, environmentOf, valueOfFormula } from './ask.js';
import { book, numbers, table, texts, waits } from './small-book.js';

interface ReferenceCase {
  readonly id: string;
  readonly inputs: Readonly<Record<string, readonly number[]>>;
  readonly expected: Readonly<Record<string, unknown>>;
}

const reference: { readonly cases: readonly ReferenceCase[] } = JSON.parse(
  readFileSync(new URL('../reference/statistics.json', import.meta.url), 'utf8'),
);

function referenceCase(id: string): ReferenceCase {
  return reference.cases.find((one) => one.id === id)!;
}

function alone(counted: string, cases: number, trials: number): Book {
  const outcome = Array.from({ length: trials }, (_, row) => (row < cases ? 'found' : 'clean'));
  return book([table('looked', counted, [texts('outcome', outcome, ['clean', 'found'])], null)], []);
}

const found = 'rate(count(looked where outcome is "found"), count(looked))';

test('a share of rows without station-days has the exact interval', () => {
  // Clopper and Pearson (1934); R 4.2.2 binom.test(3, 1000): 0.0006190… to 0.0087421….
  const { value, numerator, denominator, interval } = askNumber(found, environmentOf(alone('looks', 3, 1000)));
  expect({ value, numerator, denominator }).toEqual({ value: 0.003, numerator: 3, denominator: 1000 });
  expect(interval!.low! * 1000).toBeCloseTo(0.62, 2);
  expect(interval!.high! * 1000).toBeCloseTo(8.74, 2);
});

test('no case in n looks is an upper limit of 1 − 0.05^(1/n), never a bare zero', () => {
  // Hanley and Lippman-Hand (1983), JAMA 249:1743-1745.
  const { value, interval } = askNumber(found, environmentOf(alone('looks', 0, 300)));
  expect(value).toBe(0);
  expect(interval).toMatchObject({ low: 0, sides: 'upper' });
  expect(interval!.high).toBeCloseTo(1 - 0.05 ** (1 / 300), 12);
  const missed = askNumber(`1 - ${found}`, environmentOf(alone('looks', 0, 300)));
  expect(missed.interval).toMatchObject({ high: 1, sides: 'lower' });
  expect(missed.interval!.low).toBeCloseTo(0.05 ** (1 / 300), 12);
});

test('a share is counted by station-day, so that clustering widens its interval', () => {
  // apiclus1 of R's survey package: 4 of 183, all in one of 15 clusters; its limits are wider than the exact ones of 4 of 183.
  const { x, n } = referenceCase('cluster-api').inputs;
  const outcome = x!.flatMap((cases, at) =>
    Array.from({ length: n![at]! }, (_, row) => (row < cases ? 'found' : 'clean')),
  );
  const cluster = n!.flatMap((size, at) => Array.from({ length: size }, () => at));
  const clustered = book(
    [table('looked', 'looks', [texts('outcome', outcome)], cluster)],
    n!.map(() => 0),
  );
  const result = askNumber(found, environmentOf(clustered));
  expect(result.value).toBeCloseTo(referenceCase('cluster-api').expected.p as number, 12);
  expect(result.cautions).toContain('under 20 clusters');
  // Without the adjustment for degrees of freedom the limits are 0.00038 and 0.1246 (R survey); with it they are wider.
  expect(result.interval!.low).toBeLessThan(referenceCase('cluster-api').expected.lower_korn_graubard_no_df as number);
  expect(result.interval!.high).toBeGreaterThan(
    referenceCase('cluster-api').expected.upper_korn_graubard_no_df as number,
  );
});

function washes(endings: readonly (readonly [number, 'ended' | 'open' | 'otherwise'])[]): Book {
  const clusters = endings.map((_, row) => row);
  return book(
    [table('washed', 'washes', [waits('turnaround', endings)], clusters)],
    clusters.map(() => 0),
  );
}

test('a wait still open is censored, not dropped: the median of the 6-MP arm is 23 weeks, from 13 up', () => {
  // Freireich et al. (1963), Blood 21:699-716; R survival 3.x, survfit with conf.type "log-log".
  const { time, status } = referenceCase('km-6mp').inputs;
  const environment = environmentOf(
    washes(time!.map((minutes, at) => [minutes, status![at] === 1 ? 'ended' : 'open'])),
  );
  const median = askNumber('median(turnaround of washed)', environment);
  expect(median).toMatchObject({ value: 23, unit: 'minutes', interval: { low: 13, high: null } });
  expect(median.cautions).toContain('12 still open at the cut-off: counted as at least that long');
  // The share within 10 weeks is one less the curve at 10: 0.7529, limits 0.5032 and 0.8894.
  const within = askNumber('share_within(turnaround of washed, 10)', environment);
  expect(within.value).toBeCloseTo(1 - 0.752941176470588, 12);
  expect(within.interval!.low).toBeCloseTo(1 - 0.889361835169265, 9);
  expect(within.interval!.high).toBeCloseTo(1 - 0.503199510799957, 9);
  // 80 in 100 had not ended by the end of follow-up.
  const late = askNumber('quantile(turnaround of washed, 0.8)', environment);
  expect(late).toMatchObject({ value: null, interval: null });
  expect(late.why).not.toBeNull();
});

test('a craft that left unwashed competes: the share within a time is its cumulative incidence', () => {
  // R cmprsk::cuminc, timepoints; case cif-sim.
  const { time, cause, at } = referenceCase('cif-sim').inputs;
  const how = ['open', 'ended', 'otherwise'] as const;
  const environment = environmentOf(washes(time!.map((minutes, row) => [minutes, how[cause![row]!]!])));
  const shares = at!.map((minutes) => askNumber(`share_within(turnaround of washed, ${minutes})`, environment).value);
  const expected = referenceCase('cif-sim').expected.cif_cause1 as readonly number[];
  shares.forEach((value, place) => {
    expect(value).toBeCloseTo(expected[place]!, 9);
  });
});

test('a share within a time is resampled by the same incidence: with every wait drawn once it is that of cuminc', () => {
  // R cmprsk::cuminc, timepoints; case cif-sim. R survival for km-6mp, where none ended otherwise.
  const sorted = (id: string, codes: 'cause' | 'status') => {
    const { time } = referenceCase(id).inputs;
    const cause = referenceCase(id).inputs[codes]!;
    const order = time!.map((_, at) => at).sort((a, b) => time![a]! - time![b]!);
    const at = (wanted: (cause: number) => boolean) => Uint8Array.from(order, (row) => Number(wanted(cause[row]!)));
    const once = new Uint8Array(order.length).fill(1);
    const times = Float64Array.from(order, (row) => time![row]!);
    return (limit: number) =>
      weightedIncidence(
        times,
        at((one) => one === 1),
        at((one) => one > 0),
        once,
        limit,
        once.length,
      );
  };
  const washed = sorted('cif-sim', 'cause');
  const expected = referenceCase('cif-sim').expected.cif_cause1 as readonly number[];
  referenceCase('cif-sim').inputs.at!.forEach((limit, place) => {
    expect(washed(limit)).toBeCloseTo(expected[place]!, 12);
  });
  expect(sorted('km-6mp', 'status')(23)).toBeCloseTo(1 - 0.448179271708683, 12);
  expect(sorted('km-6mp', 'status')(36)).toBeNaN();
});

test('where some left unwashed the share within a time has resampled limits around it', () => {
  const { time, cause } = referenceCase('cif-sim').inputs;
  const how = ['open', 'ended', 'otherwise'] as const;
  const environment = environmentOf(washes(time!.map((minutes, row) => [minutes, how[cause![row]!]!])));
  const { value, interval, cautions } = askNumber('share_within(turnaround of washed, 40)', environment);
  expect(interval!.method).toContain('resamples');
  // A binomial share of 0.41 among 50 has a standard error of 0.070; censoring moves that little by 40 minutes.
  expect(value! - interval!.low!).toBeGreaterThan(1.96 * 0.06);
  expect(value! - interval!.low!).toBeLessThan(1.96 * 0.085);
  expect(interval!.high! - value!).toBeGreaterThan(1.96 * 0.06);
  expect(interval!.high! - value!).toBeLessThan(1.96 * 0.085);
  expect(cautions.join()).toMatch(/ended otherwise/);
});

/** Ninety station-days in three strata, with inspections, interceptions and staff hours that vary from day to day. */
function season() {
  const days = Array.from({ length: 90 }, (_, day) => ({
    inspections: 5 + ((day * 37) % 23),
    intercepted: (day * 13) % 5 === 0 ? 1 + (day % 2) : 0,
    hours: 8 + ((day * 7) % 9),
    stratum: day % 3,
  }));
  const cluster = days.flatMap(({ inspections }, day) => Array.from({ length: inspections }, () => day));
  const outcome = days.flatMap(({ inspections, intercepted }) =>
    Array.from({ length: inspections }, (_, row) => (row < intercepted ? 'intercepted' : 'cleared')),
  );
  const minutes = cluster.map((day, row) => 3 + ((row * 17 + day * 5) % 40));
  const tables = [
    table('inspections', 'inspections', [texts('outcome', outcome), numbers('minutes', 'minutes', minutes)], cluster),
    table(
      'station_days',
      'station days',
      [
        numbers(
          'staff_hours',
          'staff hours',
          days.map(({ hours }) => hours),
        ),
      ],
      days.map((_, day) => day),
    ),
    table('spending', 'entries', [numbers('amount', 'dollars', [90_000, 10_000])], null),
  ];
  return {
    days,
    minutes,
    cluster,
    book: book(
      tables,
      days.map(({ stratum }) => stratum),
    ),
  };
}

const { days, book: seasonBook, minutes, cluster } = season();
const environment = environmentOf(seasonBook);
const intercepted = 'count(inspections where outcome is "intercepted")';

/** The standard error of a ratio of totals by linearisation within strata: Cochran (1977), Sampling Techniques, 6.10 and 11.8. */
function ratioError(over: readonly number[], under: readonly number[]): number {
  const sum = (values: readonly number[]) => values.reduce((so, value) => so + value, 0);
  const ratio = sum(over) / sum(under);
  const variance = [0, 1, 2].map((stratum) => {
    const residuals = days.flatMap((day, at) => (day.stratum === stratum ? [over[at]! - ratio * under[at]!] : []));
    const middle = sum(residuals) / residuals.length;
    // A resample of m days has the variance of m − 1 in the divisor's place: m here, as it is drawn.
    return sum(residuals.map((residual) => (residual - middle) ** 2));
  });
  return Math.sqrt(sum(variance)) / sum(under);
}

test.each([
  [
    'count(inspections) / sum(staff_hours of station_days)',
    days.map((day) => day.inspections),
    days.map((day) => day.hours),
  ],
  [
    `ratio(${intercepted}, sum(staff_hours of station_days))`,
    days.map((day) => day.intercepted),
    days.map((day) => day.hours),
  ],
  [
    'mean(minutes of inspections)',
    days.map((_, day) => minutes.reduce((so, value, row) => (cluster[row] === day ? so + value : so), 0)),
    days.map((day) => day.inspections),
  ],
])('the resampled limits of %s agree with linearisation', (text, over, under) => {
  const { value, interval } = askNumber(text, environment);
  const error = ratioError(over, under);
  // The limits of 2,000 resamples vary by about 5 % of the standard error; skewness adds a little.
  expect(Math.abs((value! - interval!.low!) / (1.96 * error) - 1)).toBeLessThan(0.15);
  expect(Math.abs((interval!.high! - value!) / (1.96 * error) - 1)).toBeLessThan(0.15);
});

test('cost per interception agrees with the linearised limits of the count, and names seed, resamples and clusters', () => {
  const { value, unit, interval, cautions } = askNumber(`sum(amount of spending) / ${intercepted}`, environment);
  const perDay = days.map((day) => day.intercepted);
  const count = perDay.reduce((so, found) => so + found, 0);
  expect(value).toBeCloseTo(100_000 / count, 9);
  expect(unit).toBe('dollars an inspection');
  // Percentile limits keep their rank under 100,000 / count, so that they are those of the count turned over.
  const error =
    90 *
    ratioError(
      perDay,
      days.map(() => 1),
    );
  const [low, high] = [100_000 / (count + 1.96 * error), 100_000 / (count - 1.96 * error)];
  expect(Math.abs(interval!.low! / low - 1)).toBeLessThan(0.06);
  expect(Math.abs(interval!.high! / high - 1)).toBeLessThan(0.06);
  expect(interval!.method).toContain('2,000 resamples of 90 station-days within station and season (seed 1)');
  expect(cautions).toContain('spending: taken as given, because its rows belong to no station-day');
});

test('figures made from the same records stay correlated', () => {
  const known = new Map<string, Evaluated>([
    ['pace', valueOfFormula('count(inspections) / sum(staff_hours of station_days)', environment)],
  ]);
  const same = { ...environment, known };
  expect(askNumber('pace / pace', same)).toMatchObject({
    value: 1,
    interval: null,
    why: 'it is the same in every resample',
  });
  expect(askNumber('pace - pace', same).value).toBe(0);
  const doubled = askNumber('pace + pace', same);
  const once = askNumber('pace', same);
  expect(doubled.interval!.low).toBeCloseTo(2 * once.interval!.low!, 9);
});

test('counts, totals and what is only added or scaled of them are a census without interval', () => {
  for (const text of [
    'count(inspections)',
    'count(inspections) + count(inspections where outcome is "cleared")',
    'count(inspections) / 2',
    'sum(staff_hours of station_days) * 3',
    'sum(amount of spending) - sum(amount of spending)',
  ]) {
    expect(askNumber(text, environment)).toMatchObject({ interval: null, why: null });
  }
});

test('a share that is only scaled keeps its exact interval, turned round where its sign turns', () => {
  const rate = `rate(${intercepted}, count(inspections))`;
  const exact = askNumber(rate, environment).interval!;
  const scaled = askNumber(`1000 * ${rate}`, environment).interval!;
  expect(scaled).toEqual({ ...exact, low: 1000 * exact.low!, high: 1000 * exact.high! });
  const turned = askNumber(`1 - ${rate}`, environment).interval!;
  expect(turned.low).toBeCloseTo(1 - exact.high!, 14);
  expect(turned.high).toBeCloseTo(1 - exact.low!, 14);
});

test('where fewer than five records stand, there is no interval and the reason is given', () => {
  const few = askNumber(
    'sum(amount of spending) / count(inspections where outcome is "intercepted" and minutes > 38)',
    environment,
  );
  expect(few.value).not.toBeNull();
  expect(few.interval).toBeNull();
  expect(few.why).toMatch(/fewer than five/);
  const none = askNumber(
    'count(inspections where outcome is "refused") / sum(staff_hours of station_days)',
    environment,
  );
  expect(none).toMatchObject({ value: 0, interval: null });
  expect(none.why).toMatch(/0 records/);
});

test('records of a single station-day have no resampled interval', () => {
  const oneDay = book(
    [table('looked', 'looks', [numbers('minutes', 'minutes', [1, 2, 3, 4, 5, 6])], [0, 0, 0, 0, 0, 0])],
    [0, 0],
  );
  expect(askNumber('mean(minutes of looked)', environmentOf(oneDay))).toMatchObject({
    value: 3.5,
    interval: null,
    why: 'all records of one of its counts are of one station-day',
  });
});

test('a rate over rows that its cases are not among is a ratio, and says so', () => {
  const result = askNumber(`rate(${intercepted}, count(station_days))`, environment);
  expect(result.numerator).toBeNull();
  expect(result.unit).toBe('inspections a station day');
  expect(result.interval!.method).toContain('resamples');
  expect(result.cautions.join()).toMatch(/a ratio, not a share/);
});

test('what a lowest value or a number of different values stands in has no interval, and says why', () => {
  const result = askNumber('count(inspections) / distinct(minutes of inspections)', environment);
  expect(result.interval).toBeNull();
  expect(result.why).toMatch(/resampling would understate/);
});

test('a choice by a figure is made again in every resample', () => {
  const pace = 'count(inspections) / sum(staff_hours of station_days)';
  const value = askNumber(pace, environment).value!;
  const result = askNumber(`if(${pace} > ${value}, 1, 0) * ${pace}`, environment);
  // About half of the resamples lie below, where the product is 0.
  expect(result.interval!.low).toBe(0);
  expect(result.interval!.high).toBeGreaterThan(value);
});

test('a figure that decides which rows are counted is drawn again with them, and that is said', () => {
  const known = new Map<string, Evaluated>([['usual', valueOfFormula('median(minutes of inspections)', environment)]]);
  const { cautions } = askNumber('rate(count(inspections where minutes > usual), count(inspections))', {
    ...environment,
    known,
  });
  expect(cautions).toContain('usual decides which rows are counted, anew in every resample');
});

test.each([
  [
    'a function of other rows',
    'count(inspections where minutes > median(minutes of inspections))',
    'median(minutes of inspections)',
  ],
  ['the selection that is counted', 'count(long)', 'usual'],
  ['a selection narrowed further', 'mean(minutes of long where minutes > 2)', 'usual'],
])('what decides the rows is said where it stands in %s', (_where, text, name) => {
  const usual = valueOfFormula('median(minutes of inspections)', environment);
  const known = new Map<string, Evaluated>([['usual', usual]]);
  known.set('long', valueOfFormula('inspections where minutes > usual', { ...environment, known }));
  const { cautions } = askNumber(text, { ...environment, known });
  expect(cautions).toEqual([`${name} decides which rows are counted, anew in every resample`]);
});

test('a number written out, an input and a field of the rows decide nothing that could be otherwise', () => {
  // A figure may bear the name of a field; behind `where` the field is meant.
  const known = new Map<string, Evaluated>([
    ['minutes', valueOfFormula('median(minutes of inspections)', environment)],
    ['limit', givenNumber(5, unitOf(unitWord('minutes')!))],
  ]);
  const text = 'count(inspections where minutes > 5 or minutes > limit or minutes is missing)';
  expect(askNumber(text, { ...environment, known }).cautions).toEqual([]);
});

test('draws and intervals are made only when asked for', () => {
  const fresh = environmentOf(seasonBook);
  const value = valueOfFormula('count(inspections) / sum(staff_hours of station_days)', fresh);
  expect(fresh.cache.weights.size).toBe(0);
  expect((value as NumberValue).interval().interval).not.toBeNull();
  expect(fresh.cache.weights.size).toBe(1);
});

test('the same seed gives the same limits, another seed others', () => {
  const text = 'median(minutes of inspections) * 1.5 + mean(minutes of inspections)';
  const limits = (seed: number) =>
    askNumber(text, { ...environmentOf(seasonBook), resamples: { count: 500, seed } }).interval;
  expect(limits(1)).toEqual(limits(1));
  expect(limits(1)).not.toEqual(limits(2));
});

test('a quantile of plain numbers is of type 7', () => {
  // Hyndman and Fan (1996); R 4.2.2: quantile(c(1, 3, 4, 10, 20), 0.9) gives 16.
  const five = book(
    [table('looked', 'looks', [numbers('minutes', 'minutes', [20, 1, 10, 3, 4])], [0, 1, 2, 3, 4])],
    [0, 0, 0, 0, 0],
  );
  expect(askNumber('quantile(minutes of looked, 0.9)', environmentOf(five)).value).toBeCloseTo(16, 12);
});

test('money spread by an input keeps the input as given', () => {
  const at = { file: 'n.md', line: 1, column: 1 };
  const hours = inputValue('1,500', 'staff hours', { value: at, unit: at }) as Evaluated;
  const known = new Map([['hours', hours]]);
  expect(askNumber('sum(amount of spending) / hours', { ...environment, known })).toMatchObject({
    unit: 'dollars a staff hour',
    interval: null,
    why: null,
  });
  expect(ask('count(inspections) / hours', { ...environment, known })).toMatchObject({ interval: null, why: null });
});
