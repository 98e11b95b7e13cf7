import { expect, test } from 'vitest';
import { openBook } from '../../../src/finding/book.js';
import { costLimits } from '../../../src/finding/spending/cost-limits.js';
import { outcomeCosts } from '../../../src/finding/spending/outcome-costs.js';
import { many } from '../many-inspections.js';
import { ask, cells, estimate } from '../read-finding.js';
import { elkPoint, pineGate, type SmallRow, smallRecords, smallSum } from '../small-records.js';

const date = (day: number) => `2025-06-${String(day + 1).padStart(2, '0')}`;
const days = Array.from({ length: 25 }, (_, day): SmallRow => {
  return { station: 'elk', date: date(day), state: 'open', staff_hours: 4 };
});
const inspections = days.flatMap((_, day) =>
  many(`${day}-`, 1 + (day % 4), day < 3 ? 1 : 0, { started_at: `${date(day)}T18:00Z`, risk: 'low' }),
);
const spending: SmallRow[] = [
  { entry: '1', fiscal_year: 2025, category: 'personnel', station: 'elk', amount: 1000 },
  { entry: '2', fiscal_year: 2025, category: 'equipment', station: 'elk', amount: -100 },
  { entry: '3', fiscal_year: 2025, category: 'indirect', amount: 300 },
  { entry: '4', fiscal_year: 2025, category: 'personnel', station: 'pine', amount: 50 },
];
const stations = [elkPoint, pineGate];
const book = openBook(smallRecords({ stations, station_days: days, inspections, spending }), smallSum(null));

test('every outcome has a denominator of its own, refunds taken off', () => {
  const found = ask(outcomeCosts, book, [], [0, 1]);
  expect(cells(found, 'outcome', 'count', 'spent').map((row) => row.slice(0, 3))).toEqual([
    ['staff hour recorded', 100, 900],
    ['open station day', 25, 900],
    ['inspection of any kind', 61, 900],
    ['full inspection', 61, 900],
    ['high-risk full inspection', 0, 900],
    ['wash ordered', 0, 900],
    ['interception', 3, 900],
  ]);
  expect(estimate(found, 0, 'cost_each').value).toBe(9);
  expect(estimate(found, 4, 'cost_each')).toMatchObject({ value: null, why: 'none was counted' });
});

test('where the risk of no inspection was recorded, those of high risk are not told as none', () => {
  const untold = inspections.map((row) => ({ ...row, risk: null }));
  const other = openBook(smallRecords({ stations, station_days: days, inspections: untold, spending }), smallSum(null));
  const found = ask(outcomeCosts, other, [], [0, 1]);
  expect(cells(found, 'outcome').flat()).not.toContain('high-risk full inspection');
  expect(found.leftOut.join(' ')).toContain('The risk of no inspection was recorded');
});

test('a rare outcome has the exact limits of its count', () => {
  // R 4.2.2: poisson.test(3)$conf.int is 0.6186721 to 8.7672731; 900 dollars by each.
  const each = estimate(ask(outcomeCosts, book, [], [0, 1]), 6, 'cost_each');
  expect(each.value).toBe(300);
  expect(each.interval!.low).toBeCloseTo(900 / 8.7672731, 4);
  expect(each.interval!.high).toBeCloseTo(900 / 0.6186721, 2);
});

test('an outcome that was not seen costs at least what the one-sided limit says', () => {
  const found = ask(outcomeCosts, book, ['station']);
  const row = cells(found, 'station', 'outcome').findIndex(
    ([at, what]) => at === 'Pine Gate' && what === 'interception',
  );
  const each = estimate(found, row, 'cost_each');
  // None seen: at most −ln 0.05 were to be expected, 95 % one-sided; 50 dollars by that.
  expect(each).toMatchObject({ value: null, interval: { sides: 'lower', high: null } });
  expect(each.interval!.low).toBeCloseTo(50 / -Math.log(0.05), 9);
});

test('days on which nothing was found are drawn, too', () => {
  // Every day has four hours, so that hours never differ; inspections do.
  const found = ask(outcomeCosts, book, [], [0, 1]);
  expect(estimate(found, 0, 'cost_each')).toMatchObject({ interval: null, why: 'every day counts the same' });
  const { interval, value } = estimate(found, 3, 'cost_each');
  // By hand: 25 days of 1 to 4 craft, deviation 1.12 a day: about 2 × 1.12 × 5 = 11 of 61 either way.
  expect(interval!.low!).toBeGreaterThan(900 / 75);
  expect(interval!.low!).toBeLessThan(value! - 1.2);
  expect(interval!.high!).toBeLessThan(900 / 46);
});

test('money without a station stands in no station’s cost, and is counted', () => {
  const found = ask(outcomeCosts, book, ['station']);
  expect(new Set(cells(found, 'station').flat())).toEqual(new Set(['Elk Point', 'Pine Gate']));
  expect(found.leftOut).toEqual(['1 amount names no station and stand in no station’s cost.']);
});

test('a cost without limits says the true reason', () => {
  const reasons = (stationDays: number, counts: readonly number[]) =>
    costLimits(900, stationDays, () => Float64Array.from(counts));
  expect(reasons(19, [1, 2])).toEqual({ interval: null, why: 'under 20 station days' });
  expect(reasons(20, [0, 2, 3])).toEqual({ interval: null, why: 'in some resamples none was counted' });
  expect(reasons(20, [3, 3, 3])).toEqual({ interval: null, why: 'every day counts the same' });
  // Two resamples, 300 and 450 dollars each: type 7 quantiles lie 2.5 % of the way in from either.
  const { interval, why } = reasons(20, [3, 2]);
  expect(why).toBeNull();
  expect(interval!.low).toBeCloseTo(303.75, 9);
  expect(interval!.high).toBeCloseTo(446.25, 9);
});

test('under twenty station days there are no limits', () => {
  const few = openBook(
    smallRecords({ stations, station_days: days.slice(0, 19), inspections: [], spending }),
    smallSum(null),
  );
  expect(estimate(ask(outcomeCosts, few, [], [0, 1]), 0, 'cost_each').why).toBe('under 20 station days');
});
