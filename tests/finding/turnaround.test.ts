import { describe, expect, it } from 'vitest';
import { openBook } from '../../src/finding/book.js';
import { endingCurve } from '../../src/finding/ending-curve.js';
import { findingOf } from '../../src/finding/findings.js';
import { turnaround } from '../../src/finding/turnaround.js';
import type { Book } from '../../src/record/book.js';
import { ask, cells, estimate } from './read-finding.js';
import { elkPoint, inspection, pineGate, type SmallRow, smallRecords, smallSum } from './small-records.js';

const ordered = Date.parse('2025-06-01T12:00Z');
const atMinute = (minutes: number): string => new Date(ordered + minutes * 60_000).toISOString();

/** Washes ordered at noon, all for one inspection unless told. */
function bookOf(washes: readonly SmallRow[], asOf: string): Book {
  return openBook(
    smallRecords({
      stations: [elkPoint, pineGate],
      inspections: [inspection('a'), inspection('p', { station: 'pine' })],
      decontaminations: washes.map((wash, at) => ({
        wash: `w${at}`,
        inspection: 'a',
        ordered_at: atMinute(0),
        ...wash,
      })),
    }),
    smallSum(asOf),
  );
}

const released = (minutes: number, more: SmallRow = {}): SmallRow => ({
  released_at: atMinute(minutes),
  ending: 'released',
  ...more,
});

/** The row of the whole turnaround. */
const whole = 3;

describe('turnaround', () => {
  it('has a one-sided limit where every wash was through within the target', () => {
    const times = Array.from({ length: 78 }, (_, at) => 20 + at);
    const book = bookOf(
      times.map((minutes) => released(minutes)),
      atMinute(10_000),
    );
    const inside = estimate(ask(turnaround, book, [], undefined, { target: 120 }), whole, 'inside');
    // The mirror of Hanley and Lippman-Hand 1983: 0.05^(1/78).
    expect(inside).toMatchObject({ value: 1, interval: { sides: 'lower', high: 1 } });
    expect(inside.interval?.low).toBeCloseTo(0.05 ** (1 / 78), 12);
  });

  it('has the share through within a target, with leaving as a competing end and days as clusters', () => {
    // tests/reference/incidence.R, R 4.2.2, survival 3.5-3: at 12 minutes 0.354167 of those ordered had ended so, log-log
    // limits 0.10774031529068 and 0.61657571781869. Here 1 is released, 2 left unwashed, 0 open; a day each.
    const times = [3, 5, 5, 8, 11, 11, 14, 20, 21, 30, 34, 40];
    const causes = [1, 1, 2, 0, 1, 1, 2, 0, 1, 1, 2, 1];
    const cutOff = ordered + 12 * 86_400_000;
    const start = (at: number): number => (causes[at] === 0 ? cutOff - times[at]! * 60_000 : ordered + at * 86_400_000);
    const moment = (time: number): string => new Date(time).toISOString();
    const book = openBook(
      smallRecords({
        stations: [elkPoint],
        inspections: times.map((_, at) => inspection(`${at}`, { started_at: moment(ordered - at * 86_400_000) })),
        decontaminations: times.map((time, at) => ({
          wash: `${at}`,
          inspection: `${at}`,
          ordered_at: moment(start(at)),
          ...(causes[at] === 0 ? {} : { released_at: moment(start(at) + time * 60_000) }),
          ...(causes[at] === 1 ? { ending: 'released' } : causes[at] === 2 ? { ending: 'left unwashed' } : {}),
        })),
      }),
      smallSum(moment(cutOff)),
    );
    const found = ask(turnaround, book, [], undefined, { target: 12 });
    const inside = estimate(found, whole, 'inside');
    expect(inside.value).toBeCloseTo(0.35416666666667, 12);
    expect(inside.interval?.low).toBeCloseTo(0.10774031529068, 8);
    expect(inside.interval?.high).toBeCloseTo(0.61657571781869, 8);
    expect(ask(turnaround, book).columns.map(({ name }) => name)).not.toContain('inside');
    const ends = ask(endingCurve, book);
    expect(cells(ends, 'minutes', 'through', 'left').find(([minutes]) => minutes === 21)).toEqual([
      21,
      expect.closeTo(0.47135416666667, 12),
      expect.closeTo(0.177083333333333, 12),
    ]);
  });

  it('holds a wash still open as censored, not dropped and not short', () => {
    // Freireich et al. 1963, the 6-MP arm, weeks of remission, 21 patients of whom 12 were still in remission; median 23,
    // limits 13 and none: tests/reference/statistics.json, km-6mp, held to R survival.
    const ended = [6, 6, 6, 7, 10, 13, 16, 22, 23];
    const open = [6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35];
    const book = bookOf(
      [
        ...ended.map((minutes) => released(minutes)),
        // Open washes of different lengths at one cut-off were ordered at different times.
        ...open.map((minutes): SmallRow => ({ ordered_at: atMinute(35 - minutes) })),
      ],
      atMinute(35),
    );
    const found = ask(turnaround, book);
    expect(cells(found, 'stage', 'washes', 'done', 'open')[whole]).toEqual(['turnaround', 21, 9, 12]);
    const median = estimate(found, whole, 'median');
    expect(median.value).toBe(23);
    expect(median.interval).toMatchObject({ low: 13, high: null });
  });

  it('takes the mean to where the data end, with what is still open', () => {
    // The same patients seen at 20 weeks: mean to 20 weeks 16.1165266106443, tests/reference/statistics.json, km-6mp.
    const ended = [6, 6, 6, 7, 10, 13, 16];
    const open = [6, 9, 10, 11, 17, 19, 20, 20, 20, 20, 20, 20, 20, 20];
    const washes = [
      ...ended.map((minutes) => released(minutes)),
      ...open.map((minutes): SmallRow => ({ ordered_at: atMinute(20 - minutes) })),
    ];
    const found = ask(turnaround, bookOf(washes, atMinute(20)));
    expect(cells(found, 'horizon', 'mean_to_horizon')[whole]).toEqual([20, expect.closeTo(16.1165266106443, 9)]);
  });

  it('follows a craft that left unwashed until it left, and counts it apart', () => {
    // By hand: of four, one leaves at 5, the others are through at 10, 20, 30. Kaplan-Meier: 2/3 after 10, 1/3 after 20.
    const book = bookOf(
      [released(10), released(20), released(30), { released_at: atMinute(5), ending: 'left unwashed' }],
      atMinute(600),
    );
    const found = ask(turnaround, book);
    expect(cells(found, 'washes', 'done', 'left_unwashed', 'median')[whole]).toEqual([4, 3, 1, 20]);
  });

  it('shares one horizon among the groups of a stage, and says what had left by then', () => {
    // By hand: at Elk Point six are through at 10 … 60, at Pine Gate five at 10 … 50, one leaves at 5, one is held at 100.
    const elk = [10, 20, 30, 40, 50, 60].map((minutes) => released(minutes));
    const pine = [10, 20, 30, 40, 50].map((minutes) => released(minutes, { inspection: 'p' }));
    const book = bookOf(
      [...elk, ...pine, { inspection: 'p', released_at: atMinute(5), ending: 'left unwashed' }, { inspection: 'p' }],
      atMinute(100),
    );
    const found = ask(turnaround, book, ['station']);
    const rows = cells(found, 'station', 'stage', 'horizon', 'mean_to_horizon', 'left_share').slice(-2);
    expect(rows[0]).toEqual(['Elk Point', 'turnaround', 100, 35, 0]);
    expect(rows[1]!.slice(0, 3)).toEqual(['Pine Gate', 'turnaround', 100]);
    // Six at risk after the one left at 5: five through at 10 … 50, one still there at 100: (150 + 100) / 6.
    expect(rows[1]![3]).toBeCloseTo(250 / 6, 10);
    expect(rows[1]![4]).toBeCloseTo(1 / 7, 12);
  });

  it('has no percentile that the curve does not reach, and says why', () => {
    const book = bookOf([released(10), {}, {}, {}], atMinute(60));
    const p90 = estimate(ask(turnaround, book), whole, 'p90');
    expect(p90.value).toBeNull();
    expect(p90.why).toBe('fewer than 90 % were seen to end');
  });

  it('of no washes has no values', () => {
    const found = ask(turnaround, bookOf([], atMinute(60)));
    expect(found.rows).toHaveLength(4);
    expect(estimate(found, whole, 'median').value).toBeNull();
  });
});

describe('turnaround curve', () => {
  const curve = findingOf('turnaround curve', 'decontaminations')!;

  it('starts with everybody there and runs on to the longest follow-up', () => {
    const book = bookOf([released(10), released(20), {}, {}], atMinute(60));
    expect(cells(ask(curve, book), 'minutes', 'still_there', 'followed')).toEqual([
      [0, 1, 4],
      [10, 0.75, 4],
      [20, 0.5, 3],
      [60, 0.5, null],
    ]);
  });

  it('keeps at most 120 points, each a true point of the whole curve', () => {
    const many = Array.from({ length: 1000 }, (_, at) => released(at + 1));
    const points = cells(ask(curve, bookOf(many, atMinute(2000))), 'minutes', 'still_there');
    expect(points.length).toBeLessThanOrEqual(120);
    for (const [minutes, share] of points) expect(share).toBeCloseTo(1 - (minutes as number) / 1000, 9);
    expect(points.at(-1)).toEqual([1000, 0]);
  });
});
