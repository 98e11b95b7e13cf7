import { describe, expect, it } from 'vitest';
import { loadSolver } from '../../../src/command/load-solver.js';
import { openBook } from '../../../src/finding/book.js';
import { staffCurve } from '../../../src/finding/staffing/staff-curve.js';
import { staffPlan } from '../../../src/finding/staffing/staff-plan.js';
import { many } from '../many-inspections.js';
import { ask, cells, estimate } from '../read-finding.js';
import { elkPoint, pineGate, type SmallRow, smallRecords, smallSum } from '../small-records.js';

// Sundays and Mondays of June 2025, Elk Point open 12 to 20 UTC, which is 6 to 14 by its clock; Pine Gate 13 to 21 UTC,
// 6 to 14 by its own. One person at Elk Point, two at Pine Gate.
const dates = ['01', '02', '08', '09', '15', '16', '22', '23', '29', '30'].map((day) => `2025-06-${day}`);
const stationDay = (station: string, date: string, opens: number, people: number): SmallRow => ({
  ...{ station, date, state: 'open', staff_hours: 8 * people },
  ...{ opened_at: `${date}T${opens}:00Z`, closed_at: `${date}T${opens + 8}:00Z` },
});
const days = dates.flatMap((date) => [stationDay('elk', date, 12, 1), stationDay('pine', date, 13, 2)]);
// On Elk Point’s Sunday mornings some 4 of 100 craft carry mussels; at every other watch 20 craft come a day, none with mussels.
const craft = dates.flatMap((date, at) => {
  const sunday = at % 2 === 0;
  const hour = (name: string, count: number, found: number, more: SmallRow) =>
    many(`${name}${date}`, count, found, more);
  return [
    ...hour('e', sunday ? 80 + 5 * at : 20, sunday ? 2 + at / 2 : 0, { started_at: `${date}T13:30Z` }),
    ...hour('l', 20, 0, { started_at: `${date}T17:30Z` }),
    ...hour('p', 20, 0, { station: 'pine', started_at: `${date}T15:30Z` }),
  ];
});
const extra = [
  { station: 'elk', date: '2025-06-03', state: 'closed' },
  { station: 'elk', date: '2025-06-04', state: 'open' },
];
const records = smallRecords({ stations: [elkPoint, pineGate], station_days: [...days, ...extra], inspections: craft });
const solver = await loadSolver();
const book = openBook(records, smallSum(null), solver);
const plan = (options: Record<string, number>, of = book) => ask(staffPlan, of, [], undefined, options);

describe('a plan of further staff hours', () => {
  it('takes the watch with most craft at the station that finds, for whole shifts through the season', () => {
    const found = plan({ hours: 30, shift: 4, reached: 0.75, people: 1 });
    // Five Sundays of four hours take 20 of the 30 hours; no second watch fits into the rest.
    expect(cells(found, 'station', 'weekday', 'watch', 'people', 'days', 'hours', 'crew', 'full')).toEqual([
      ['Elk Point', 'Sunday', '6:00 to 10:00', 1, 5, 20, 1, 500],
    ]);
    expect(found.leftOut).toEqual(['1 open day has no staff hours or no times of opening and closing: in no shift.']);
  });

  it('gains what one more person of two reaches of the craft still missed', () => {
    // By hand: one person reaches 3/4 of the craft, a second 3/4 of the rest: a quarter of what is found now. Elk Point
    // finds 20 on 800 and Pine Gate none on 200; drawing the two rates together takes a little off Elk Point’s.
    const gained = estimate(plan({ hours: 20, shift: 4, reached: 0.75, people: 1 }), 0, 'gained');
    const alone = (500 * 20) / 800 / 4;
    expect(gained.value!).toBeLessThan(alone);
    expect(gained.value!).toBeGreaterThan(0.95 * alone);
    expect(gained.interval!.low!).toBeLessThan(gained.value!);
    expect(gained.interval!.high!).toBeGreaterThan(gained.value!);
  });

  it('brings less with each further person', () => {
    const [one, two] = [1, 2].map((people) => {
      const found = plan({ hours: 20 * people, shift: 4, reached: 0.75, people });
      return found.rows.length === 1 ? estimate(found, 0, 'gained').value! : null;
    });
    // The second person: 3/4 of a sixteenth more by three quarters, a quarter of the first's gain.
    expect(two! / one!).toBeCloseTo(1.25, 9);
  });

  it('of days on which no station was open is none, and says why', () => {
    const shut = openBook(
      smallRecords({ stations: [elkPoint], station_days: extra, inspections: [] }),
      smallSum(null),
      solver,
    );
    const curve = ask(staffCurve, shut, [], undefined, { hours: 30, shift: 4, reached: 0.75, people: 1 });
    for (const found of [plan({ hours: 30, shift: 4, reached: 0.75, people: 1 }, shut), curve]) {
      expect(found.rows).toEqual([]);
      expect(found.said?.join()).toContain('on no day asked of was a station open');
    }
  });

  it('gives every station its least, and none more than its most', () => {
    const least = plan({ hours: 40, shift: 4, reached: 0.75, people: 1, least: 20 });
    expect(cells(least, 'station').flat().sort()).toEqual(['Elk Point', 'Pine Gate']);
    const most = plan({ hours: 40, shift: 4, reached: 0.75, people: 2, most: 20 });
    expect(cells(most, 'station', 'people')).toContainEqual(['Elk Point', 1]);
    expect(plan({ hours: 30, shift: 4, reached: 0.75, people: 1, least: 20 }).said).toEqual([
      'No plan: no choice of shifts keeps the least and the most of every station.',
    ]);
  });

  it('is the same without the solver, and says which solved it', () => {
    const options = { hours: 60, shift: 4, reached: 0.75, people: 2 };
    const [solved, alone] = [plan(options), plan(options, openBook(records, smallSum(null)))];
    expect(alone.rows).toEqual(solved.rows);
    expect(solved.said!.join(' ')).toContain('by HiGHS and again by dynamic programming: both found the same best');
    expect(alone.said!.join(' ')).toContain('no other solver was at hand');
  });

  it('says what is wrong instead of planning', () => {
    expect(plan({ hours: 30, reached: 1 }).said).toEqual(['No plan: the share reached must lie between 0 and 1.']);
    expect(plan({ hours: -1 }).rows).toEqual([]);
  });

  it('says how often resampled days would choose the same watch', () => {
    const again = estimate(plan({ hours: 20, shift: 4, reached: 0.75, people: 1 }), 0, 'chosen_again');
    expect(again).toMatchObject({ denominator: 200, interval: null });
    expect(again.value).toBeGreaterThan(0.95);
  });
});

describe('the curve of further staff hours', () => {
  const curve = (options: Record<string, number>) => ask(staffCurve, book, [], undefined, options);

  it('never falls, and its last step is the plan', () => {
    const found = curve({ hours: 200, shift: 4, reached: 0.75, people: 2, steps: 8 });
    const gains = cells(found, 'gained').flat().map(Number);
    expect(gains).toHaveLength(8);
    expect(gains.every((gain, at) => at === 0 || gain >= gains[at - 1]!)).toBe(true);
    const planned = plan({ hours: 200, shift: 4, reached: 0.75, people: 2 });
    const sum = cells(planned, 'gained').reduce((total, [gain]) => total + Number(gain), 0);
    expect(gains.at(-1)).toBeCloseTo(sum, 9);
  });

  it('is at every step the plan of those hours alone, which HiGHS finds too', () => {
    const options = { shift: 4, reached: 0.75, people: 2 };
    const found = curve({ ...options, hours: 130, steps: 5 });
    const bound = 'What 130 staff hours could bring if shifts could be divided, HiGHS found too.';
    expect(found.said).toEqual([`The plans were found by one dynamic program. ${bound}`]);
    const alone = [26, 52, 78, 104, 130].map((hours) => curve({ ...options, hours, steps: 1 }));
    for (const { said } of alone)
      expect(said!.join(' ')).toContain('The plan was solved as an integer program by HiGHS');
    const told = ['hours', 'used', 'shifts'];
    expect(cells(found, ...told)).toEqual(alone.flatMap((one) => cells(one, ...told)));
    const gains = (one: typeof found): unknown[] => cells(one, 'gained').flat();
    gains(found).forEach((gain, at) => {
      expect(gain).toBeCloseTo(Number(gains(alone[at]!)[0]), 9);
    });
  });

  it('prices the next hour at a station that takes all hours, where nothing limits what it can take', () => {
    // All 20 hours go to Elk Point’s Sunday mornings; the next best hour is Elk Point’s too, unless it can take no more.
    const price = (more: Record<string, number>): unknown => {
      const told = { hours: 20, shift: 4, reached: 0.75, people: 1, steps: 1, ...more };
      return cells(ask(staffCurve, book, [], undefined, told), 'price')[0]![0];
    };
    expect(price({})).toBe(price({ most: 10_000 }));
    expect(price({})).toBeGreaterThan(price({ most: 20 }) as number);
  });

  it('tells every sum of hours once, and takes no other steps than it can', () => {
    const few = cells(curve({ hours: 3, shift: 1, reached: 0.75, people: 1, steps: 10 }), 'hours');
    expect(few).toEqual([[0], [1], [2], [3]]);
    for (const steps of [0, 2.5, 51]) {
      const found = curve({ hours: 20, shift: 4, reached: 0.75, people: 1, steps });
      expect(found.rows).toEqual([]);
      expect(found.said).toEqual(['No plan: steps must be a whole number from 1 to 50.']);
    }
  });

  it('gives what each costs in wages, with the limits turned round', () => {
    const found = curve({ hours: 20, shift: 4, reached: 0.75, people: 1, wage: 10, steps: 1 });
    const [gained, cost] = [estimate(found, 0, 'gained'), estimate(found, 0, 'cost_each')];
    expect(cost.value).toBeCloseTo(200 / gained.value!, 9);
    expect(cost.interval!.low).toBeCloseTo(200 / gained.interval!.high!, 9);
    expect(cost.interval!.high).toBeCloseTo(200 / gained.interval!.low!, 9);
  });
});
