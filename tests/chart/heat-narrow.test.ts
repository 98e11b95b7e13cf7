import type { Element } from 'hast';
import { toHtml } from 'hast-util-to-html';
import { describe, expect, it } from 'vitest';
import { drawingWidths } from '../../src/chart/axes.js';
import { drawChart } from '../../src/chart/draw-chart.js';
import type { Drawn } from '../../src/chart/drawn.js';
import type { EvaluatedSheet } from '../../src/notebook/evaluated.js';
import { weekdays } from '../../src/record/calendar-names.js';
import { key, missing, number, request, sheet, text, value } from './small-sheet.js';

const hours = Array.from({ length: 15 }, (_, at) => at + 6);

/** Days down and hours across, with a number of its own in every field but the last, which has none. */
function byHour(days: readonly string[], across: readonly number[]): EvaluatedSheet {
  const last = days.length * across.length - 1;
  return sheet(
    [key('day'), key('hour'), value('inspected', 'whole')],
    days.flatMap((day, row) =>
      across.map((hour, column) => {
        const at = row * across.length + column;
        return [text(day), number(hour), at === last ? missing('not recorded') : number(1001 + at)];
      }),
    ),
  );
}

function drawn(from: EvaluatedSheet, widths: 'both' | 'narrow'): Drawn {
  const result = drawChart(request('heat', { x: 'hour', y: 'day', value: 'inspected' }), from, 'small.md', widths);
  if ('problems' in result) throw new Error(JSON.stringify(result.problems));
  return result.chart;
}

const widthOf = (svg: Element): number => Number(String(svg.properties.viewBox).split(' ')[2]);

/** The texts of a drawing, in its order. */
function textsOf(svg: Element): readonly string[] {
  return [...toHtml(svg, { space: 'svg' }).matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, said]) => said!);
}

/** The number of a field of the week, as it is written. */
const written = (day: number, hour: number): string => (1001 + day * hours.length + hour).toLocaleString('en-US');

describe('a heat map on a telephone', () => {
  const week = byHour(weekdays, hours);
  const both = drawn(week, 'both');

  it('stands within its width with every number that the wide one has, its hours down the side', () => {
    expect(widthOf(both.svg)).toBeGreaterThan(drawingWidths.narrow);
    expect(widthOf(both.narrow!)).toBeLessThanOrEqual(drawingWidths.narrow);
    const said = textsOf(both.narrow!);
    const all = weekdays.flatMap((_, day) => hours.map((_, hour) => written(day, hour))).slice(0, -1);
    for (const drawing of [both.svg, both.narrow!]) expect(textsOf(drawing)).toEqual(expect.arrayContaining(all));
    expect(said).not.toContain(written(weekdays.length - 1, hours.length - 1));
    for (const name of [...hours.map(String), 'Mon', 'Sun', 'Hour', 'Day']) expect(said).toContain(name);
  });

  it('puts every number where its own day and hour cross', () => {
    const html = toHtml(both.narrow!, { space: 'svg' });
    const places = new Map(
      [...html.matchAll(/<text[^>]*transform="translate\(([\d.]+),([\d.]+)\)"[^>]*>([^<]*)</g)].map(
        ([, x, y, said]) => [said!, [Number(x), Number(y)] as const],
      ),
    );
    const of = (day: number, hour: number) => places.get(written(day, hour))!;
    const columns = new Set(weekdays.flatMap((_, day) => hours.slice(1).map((_, hour) => of(day, hour)[0])));
    expect(columns.size).toBe(weekdays.length);
    expect(of(0, 0)[0]).toBe(of(0, 9)[0]);
    expect(of(0, 9)[1]).toBe(of(4, 9)[1]);
    expect(of(1, 0)[0]).toBeGreaterThan(of(0, 0)[0]);
    expect(of(0, 1)[1]).toBeGreaterThan(of(0, 0)[1]);
  });

  it('explains the hatching within its width too', () => {
    expect(textsOf(both.narrow!)).toContain('no value or too few');
    const html = toHtml(both.narrow!, { space: 'svg' });
    expect(html).toContain('<rect x="0" y="52" width="24"');
    expect(toHtml(both.svg, { space: 'svg' })).not.toContain('<rect x="0" y="52"');
  });

  it('keeps its columns where they have room as they are', () => {
    const few = drawn(byHour(weekdays, hours.slice(0, 5)), 'both');
    const said = textsOf(few.narrow!);
    expect(said).toContain('Monday');
    expect(said).not.toContain('Mon');
  });

  it('is drawn wide where it has room neither way', () => {
    const days = hours.map((hour) => `Day ${hour}`);
    expect(drawn(byHour(days, hours), 'both').narrow).toBeUndefined();
    const alone = drawn(byHour(days, hours), 'narrow');
    expect(alone.isNarrow).toBeUndefined();
    expect(widthOf(alone.svg)).toBeGreaterThan(drawingWidths.narrow);
    expect(drawn(week, 'narrow').isNarrow).toBe(true);
  });
});
