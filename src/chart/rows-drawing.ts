import * as Plot from '@observablehq/plot';
import { footOf, measureAxisX, nameAxis, rowHeight, spaceForNames, textSize, topOf } from './axes.js';
import type { AskedChart, Drawing, Unfit } from './chart-kind.js';
import { paint } from './colours.js';
import { plotDrawing } from './plot-drawing.js';
import { absentWord, namingColumns, type Point, pointsOf, upperEnd } from './points.js';
import { readingOf } from './reading.js';
import { repeatedName } from './repeated-name.js';
import { shownScale } from './shown-scale.js';

/** Rows down the side and their values across, as dots or as bars from zero. */
export function drawRows(asked: AskedChart, as: 'dots' | 'bars'): Drawing | Unfit {
  const named = asked.columns.get('y');
  const naming = named === undefined ? namingColumns(asked) : [named];
  const points = pointsOf(asked, naming);
  const names = points.map((point) => point.name);
  const repeated = repeatedName(names, 'y');
  if (repeated !== null) return repeated;
  const { label } = shownScale(asked.sheet, asked.columns.get('value')!);
  const ends = points.flatMap((point) => [point.value, point.low, point.high]);
  const domain = [footOf(ends), topOf(ends)];
  const mark = as === 'dots' ? 'dot' : 'bar';
  const reading = readingOf(points, naming, { mark, interval: 'the line', absent: 'is marked so' });
  const svg = plotDrawing(
    { name: asked.request.name, title: asked.request.caption, description: reading.join(' ') },
    {
      width: asked.width,
      height: points.length * rowHeight(names, asked.width) + 58,
      marginTop: 6,
      marginRight: 24,
      marginBottom: 48,
      marginLeft: spaceForNames(names, asked.width),
      x: { domain, nice: true, type: 'linear' },
      y: { domain: names, type: as === 'dots' ? 'point' : 'band', padding: as === 'dots' ? 0.5 : 0.35 },
      marks: [
        ...measureAxisX(label, asked.width),
        nameAxis(names, asked.width),
        Plot.ruleX([0], { stroke: paint('rule') }),
        ...marks(points, as),
      ],
    },
  );
  return { svg, reading, specification: null };

  function marks(all: readonly Point[], kind: 'dots' | 'bars'): Plot.Markish[] {
    const drawn = all.filter((point) => point.value !== null);
    const edge = domain[1]!;
    const lines = drawn.filter((point) => point.limits !== null);
    const line = (some: readonly Point[], dash: string | undefined): Plot.Markish =>
      Plot.ruleY(some, {
        y: 'name',
        x1: (point: Point) => point.low ?? 0,
        x2: (point: Point) => upperEnd(point, edge),
        stroke: paint(kind === 'dots' ? 'accent' : 'ink'),
        strokeWidth: 1.5,
        ...(dash === undefined ? {} : { strokeDasharray: dash }),
      });
    return [
      ...(kind === 'bars'
        ? [Plot.barX(drawn, { y: 'name', x1: 0, x2: 'value', fill: paint('accent-wash'), stroke: paint('accent') })]
        : []),
      line(
        lines.filter((point) => point.limits === 'two'),
        undefined,
      ),
      line(
        lines.filter((point) => point.limits === 'upper' || point.limits === 'lower'),
        '3 3',
      ),
      ...(kind === 'dots'
        ? [
            Plot.dot(drawn, {
              y: 'name',
              x: 'value',
              r: 4.5,
              fill: (point: Point) => paint(point.limits === 'upper' ? 'paper' : 'accent'),
              stroke: paint('accent'),
              strokeWidth: 1.5,
            }),
          ]
        : []),
      Plot.text(
        all.filter((point) => point.value === null),
        {
          y: 'name',
          x: 0,
          dx: 8,
          text: absentWord,
          textAnchor: 'start',
          fontStyle: 'italic',
          fontSize: textSize,
          fill: paint('soft'),
        },
      ),
    ];
  }
}
