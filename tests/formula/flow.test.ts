import { expect, test } from 'vitest';
import { sheetValue } from '../../src/formula/sheet/sheet-value.js';
import { kindOfValue } from '../../src/formula/value/kind-of-value.js';
import { newcombeDifference } from '../../src/statistic/difference/newcombe.js';
import { randomFrom } from '../../src/statistic/random.js';
import { costPerEvent } from '../../src/statistic/ratio/cost-per-event.js';
import { fiellerRatio } from '../../src/statistic/ratio/fieller.js';
import { askNumber, environmentOf, valueOfFormula } from './ask.js';
import { book, numbers, table, texts } from './small-book.js';

// The limits of a figure that the language resamples against those that `statistic/` works out directly, which its own
// tests hold to published values. A percentile limit of 2,000 resamples has a standard error of
// √(0.025 × 0.975 / 2,000) / φ(1.96) = 0.060 standard errors of the figure (Serfling 1980, section 2.3.3).
const monteCarlo = 3 * 0.06;

interface Day {
  readonly inspections: number;
  readonly intercepted: number;
  readonly dollars: number;
}

/** Station-days whose interceptions are Poisson, so that the exact limits of their count hold too. */
function drawDays(count: number, mean: number): readonly Day[] {
  const random = randomFrom(7);
  return Array.from({ length: count }, () => {
    let intercepted = 0;
    for (let left = Math.exp(-mean), product = random.uniform(); product > left; product *= random.uniform())
      intercepted += 1;
    const inspections = 20 + Math.floor(20 * random.uniform()) + intercepted;
    return { inspections, intercepted, dollars: 150 + 10 * inspections + 100 * random.uniform() };
  });
}

const days = drawDays(400, 1.5);
const cluster = days.flatMap(({ inspections }, day) => Array.from({ length: inspections }, () => day));
const outcome = days.flatMap(({ inspections, intercepted }) =>
  Array.from({ length: inspections }, (_, at) => (at < intercepted ? 'intercepted' : 'cleared')),
);
const season = book(
  [
    table('inspections', 'inspections', [texts('outcome', outcome)], cluster),
    table(
      'station_days',
      'station days',
      [
        numbers(
          'staff_cost',
          'dollars',
          days.map(({ dollars }) => dollars),
        ),
      ],
      days.map((_, day) => day),
    ),
    table('spending', 'entries', [numbers('amount', 'dollars', [90_000, 30_000])], null),
  ],
  days.map(() => 0),
);
const environment = environmentOf(season);
const events = days.reduce((sum, { intercepted }) => sum + intercepted, 0);

function expectClose(
  found: { low: number | null; high: number | null },
  direct: { low: number | null; high: number | null },
) {
  const error = (direct.high! - direct.low!) / (2 * 1.96);
  expect(Math.abs(found.low! - direct.low!) / error).toBeLessThan(monteCarlo);
  expect(Math.abs(found.high! - direct.high!) / error).toBeLessThan(monteCarlo);
}

test('cost per interception through the language agrees with the exact Poisson limits of the count', () => {
  const direct = costPerEvent(120_000, events);
  const found = askNumber('sum(amount of spending) / count(inspections where outcome is "intercepted")', environment);
  expect(found).toMatchObject({ value: direct.value, unit: 'dollars an inspection' });
  expectClose(found.interval!, direct.interval);
});

test('staff cost per interception, both by station-day, agrees with Fieller’s limits of the ratio', () => {
  const direct = fiellerRatio(
    days.map(({ dollars }) => dollars),
    days.map(({ intercepted }) => intercepted),
  );
  const text = 'sum(staff_cost of station_days) / count(inspections where outcome is "intercepted")';
  const found = askNumber(text, environment);
  expect(found.value).toBeCloseTo(direct.value!, 8);
  expectClose(found.interval!, direct.interval!);
});

test('the difference of shares of different records has the limits of Newcombe’s method 10', () => {
  // Newcombe RG (1998) Stat Med 17:873-890, table II, (a) 56/70 − 48/80: 0.0524 to 0.3339; (f) 10/10 − 0/20: 0.6791 to 1.0000.
  const side = (name: string, cases: number, trials: number) => {
    const found = Array.from({ length: trials }, (_, row) => (row < cases ? 'yes' : 'no'));
    return table(name, 'looks', [texts('found', found)], null);
  };
  const difference = (one: readonly [number, number], other: readonly [number, number]) => {
    const share = (name: string) => `share(count(${name} where found is "yes"), count(${name}))`;
    const both = book([side('first', ...one), side('second', ...other)], []);
    return askNumber(`${share('first')} - ${share('second')}`, environmentOf(both));
  };
  const a = difference([56, 70], [48, 80]);
  expect(a.value).toBeCloseTo(0.2, 12);
  expect(a.interval).toMatchObject({ low: expect.closeTo(0.0524, 4), high: expect.closeTo(0.3339, 4) });
  expect(a.interval!.method).toContain('Newcombe');
  const f = difference([10, 10], [0, 20]);
  expect(f.interval).toMatchObject({ low: expect.closeTo(0.6791, 4), high: expect.closeTo(1, 4) });
});

test('two shares of the same station-days are resampled together instead, so that they stay correlated', () => {
  const share = (value: string) => `share(count(inspections where outcome is "${value}"), count(inspections))`;
  const apart = askNumber(`${share('cleared')} - ${share('intercepted')}`, environment);
  expect(apart.interval!.method).toMatch(/^percentile limits/);
  // 1 − 2p moves twice as far as p: as if the two were independent it would be √2 times too short.
  const one = askNumber(`2 * ${share('intercepted')}`, environment);
  const width = ({ interval }: typeof one) => interval!.high! - interval!.low!;
  expect(width(apart) / width(one)).toBeGreaterThan(0.9);
  expect(width(apart) / width(one)).toBeLessThan(1.1);
});

test('shares of different station-days are compared at their effective sizes: clustering widens the limits', () => {
  // Ten looks a day that all agree are one look a day: 12 of 30 days against 6 of 30 (Kish 1965, design effect 10).
  const found = Array.from({ length: 600 }, (_, row) => {
    const day = Math.floor(row / 10);
    return (day < 30 ? day < 12 : day < 36) ? 'yes' : 'no';
  });
  const when = Array.from({ length: 600 }, (_, row) => (row < 300 ? 1 : 2));
  const filled = [texts('found', found), numbers('season', null, when)];
  const clustered = book(
    [
      table(
        'looked',
        'looks',
        filled,
        found.map((_, row) => Math.floor(row / 10)),
      ),
    ],
    Array.from({ length: 60 }, (_, day) => (day < 30 ? 0 : 1)),
  );
  const share = (of: number) =>
    `share(count(looked where found is "yes" and season is ${of}), count(looked where season is ${of}))`;
  const { value, interval } = askNumber(`${share(1)} - ${share(2)}`, environmentOf(clustered));
  expect(value).toBeCloseTo(0.2, 12);
  const direct = newcombeDifference(12, 30, 6, 30).interval!;
  // The variance of 30 days is taken with 29 degrees of freedom: up to 1/60 wider.
  expect((interval!.high! - interval!.low!) / (direct.high! - direct.low!)).toBeGreaterThan(1);
  expect((interval!.high! - interval!.low!) / (direct.high! - direct.low!)).toBeLessThan(1.03);
});

test('what is made of no case at all has no interval rather than one of no width, and says why', () => {
  const none = 'share(count(inspections where outcome is "refused"), count(inspections))';
  const found = askNumber(`${none} + ${none} * ${none}`, environment);
  expect(found).toMatchObject({ value: 0, interval: null });
  expect(found.why).toMatch(/fewer than five/);
});

test('a place among rows that cannot be told apart reaches over all of them', () => {
  const parts = ['a', 'b', 'c'];
  const rowsOf = (part: string) => {
    const rows = cluster.flatMap((day, row) => (parts[day % 3] === part ? [row] : []));
    return { sheet: 's', table: 'inspections', rows: Uint32Array.from(rows), keys: new Map([['part', part]]) };
  };
  const cells = (text: string) =>
    parts.map((part) => valueOfFormula(text, environmentOf(season, new Map(), rowsOf(part))));
  const like = cells('share(count(where outcome is "intercepted"), count())');
  const field = { name: 'part', kind: 'text', unit: null, codes: null, labels: null, meaning: '' } as const;
  const keys = { fields: [field], rows: parts.map((part) => [part]) };
  const sheet = sheetValue('s', keys, new Map([['like', { kind: kindOfValue(like[0]!), cells: like }]]));
  const places = parts.map((part) =>
    askNumber('rank_from_highest(like of s)', environmentOf(season, new Map([['s', sheet]]), rowsOf(part))),
  );
  expect(places.map(({ value }) => value).toSorted()).toEqual([1, 2, 3]);
  for (const { interval } of places) expect([interval!.low, interval!.high]).toEqual([1, 3]);
});
