import * as Plot from '@observablehq/plot';
import { footOf, measureAxisY, textSize, topOf } from '../axes.js';
import { type AskedChart, type ChartKind, type Drawing, sharedOptions, type Unfit } from '../chart-kind.js';
import { paint } from '../colours.js';
import { orderedKeys } from '../key-text.js';
import { placeAxis } from '../place-axis.js';
import { plotDrawing } from '../plot-drawing.js';
import { absentWord, keyColumns, type Point, pointsOf, upperEnd } from '../points.js';
import { emptyPlaces, readingOf } from '../reading.js';
import { repeatedName } from '../repeated-name.js';
import { shownScale } from '../shown-scale.js';

/** A column a row from zero, over a key whose values follow one another. */
export const columns: ChartKind = {
  name: 'columns',
  shows: 'One column for each value of an ordered key, from zero, with its interval as a line.',
  options: [
    sharedOptions.value,
    {
      word: 'x',
      takes: 'column',
      needed: false,
      meaning: 'The column along the bottom, such as a month or an hour; without it, the first key.',
    },
    sharedOptions.low,
    sharedOptions.high,
  ],
  draw: drawColumns,
};

const height = 300;
const marginLeft = 58;
const marginRight = 18;

function drawColumns(asked: AskedChart): Drawing | Unfit {
  const along = asked.columns.get('x') ?? keyColumns(asked)[0] ?? asked.columns.get('value')!;
  const points = pointsOf(asked, [along]);
  const repeated = repeatedName(
    points.map((point) => point.name),
    'x',
  );
  if (repeated !== null) return repeated;
  const names = orderedKeys(asked.sheet, along);
  const { label } = shownScale(asked.sheet, asked.columns.get('value')!);
  const ends = points.flatMap((point) => [point.value, point.low, point.high]);
  const domain = [footOf(ends), topOf(ends)];
  const axis = placeAxis(names, along.column.label, asked.width - marginLeft - marginRight);
  const reading = [
    ...readingOf(points, [along], { mark: 'column', interval: 'the line', absent: 'is marked so' }),
    ...emptyPlaces(names.length - points.length),
  ];
  const drawn = points.filter((point) => point.value !== null);
  const svg = plotDrawing(
    { name: asked.request.name, title: asked.request.caption, description: reading.join(' ') },
    {
      width: asked.width,
      height: height + axis.marginBottom,
      marginTop: 34,
      marginLeft,
      marginRight,
      marginBottom: axis.marginBottom,
      x: { domain: names, type: 'band', padding: 0.22 },
      y: { domain, nice: true, type: 'linear' },
      marks: [
        ...measureAxisY(label),
        ...axis.marks,
        Plot.barY(drawn, { x: 'name', y1: 0, y2: 'value', fill: paint('accent-wash'), stroke: paint('accent') }),
        ...['two', 'upper', 'lower'].map((limits) =>
          Plot.ruleX(
            drawn.filter((point) => point.limits === limits),
            {
              x: 'name',
              y1: (point: Point) => point.low ?? 0,
              y2: (point: Point) => upperEnd(point, domain[1]!),
              stroke: paint('ink'),
              strokeWidth: 1.5,
              ...(limits === 'two' ? {} : { strokeDasharray: '3 3' }),
            },
          ),
        ),
        Plot.text(
          points.filter((point) => point.value === null),
          {
            x: 'name',
            y: 0,
            dy: -8,
            text: absentWord,
            rotate: -90,
            textAnchor: 'start',
            fontStyle: 'italic',
            fontSize: textSize,
            fill: paint('soft'),
          },
        ),
        Plot.ruleY([0], { stroke: paint('rule') }),
      ],
    },
  );
  return { svg, reading, specification: null };
}
