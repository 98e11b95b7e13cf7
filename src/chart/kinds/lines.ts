import * as Plot from '@observablehq/plot';
import { footOf, measureAxisY, textSize, topOf } from '../axes.js';
import { type AskedChart, type ChartKind, type Drawing, sharedOptions, type Unfit } from '../chart-kind.js';
import { paint } from '../colours.js';
import { orderedKeys } from '../key-text.js';
import { lineLegend, markOf } from '../legend.js';
import { placeAxis } from '../place-axis.js';
import { plotDrawing } from '../plot-drawing.js';
import { keyColumns, type Point, upperEnd } from '../points.js';
import { readingOf, spokenOf } from '../reading.js';
import { repeatedName } from '../repeated-name.js';
import { type Look, looksOf } from '../series.js';
import { type Series, seriesColumn, seriesOf } from '../series-points.js';
import { shownScale } from '../shown-scale.js';
import { textWidth } from '../text-width.js';

/** A line for each value of a second key, over a key whose values follow one another. */
export const lines: ChartKind = {
  name: 'lines',
  shows: 'One line for each series over an ordered key, broken where a value is absent or a definition changed.',
  options: [
    sharedOptions.value,
    {
      word: 'x',
      takes: 'column',
      needed: false,
      meaning: 'The column along the bottom, such as a month or a season; without it, the last key.',
    },
    sharedOptions.by,
    sharedOptions.low,
    sharedOptions.high,
    {
      word: 'breaks',
      takes: 'list',
      needed: false,
      meaning:
        'Values of the bottom key from which a definition is another: the lines stop before them and begin anew.',
    },
    {
      word: 'intervals',
      takes: ['whiskers', 'band', 'none'],
      needed: false,
      meaning: 'How intervals are drawn: whiskers (unless said otherwise), band or none.',
    },
  ],
  draw: drawLines,
};

const marginLeft = 58;
const marginRight = 22;

function drawLines(asked: AskedChart): Drawing | Unfit {
  const along = asked.columns.get('x') ?? keyColumns(asked).at(-1) ?? asked.columns.get('value')!;
  const by = seriesColumn(asked, along);
  const series = seriesOf(asked, along);
  if ('code' in series) return series;
  for (const { points } of series) {
    const repeated = repeatedName(
      points.map((point) => point.name),
      'x',
    );
    if (repeated !== null) return repeated;
  }
  const names = orderedKeys(asked.sheet, along);
  const breaks = (asked.settings.get('breaks') ?? '').split(',').filter((name) => name !== '');
  const unknown = breaks.find((name) => !names.includes(name));
  if (unknown !== undefined) return unknownBreak(unknown, names);
  const style = asked.settings.get('intervals') ?? 'whiskers';
  const { label } = shownScale(asked.sheet, asked.columns.get('value')!);
  const all = series.flatMap(({ points }) => points);
  const ends = all.flatMap((point) => (style === 'none' ? [point.value] : [point.value, point.low, point.high]));
  const domain = [footOf(ends), topOf(ends)];
  const axis = placeAxis(names, along.column.label, asked.width - marginLeft - marginRight);
  const looks = looksOf(series.map(({ name }) => name));
  const reading = [
    ...readingOf(all, by === null ? [spokenOf(along, asked.sheet)] : [by, along], {
      mark: 'mark',
      interval: style === 'none' ? null : style === 'band' ? 'the shading' : 'the upright line',
      absent: 'leaves a gap in its line',
    }),
    ...(breaks.length > 0
      ? [`A definition changed from ${breaks.join(' and ')} on: the lines on either side do not compare.`]
      : []),
  ];
  const legend = series.length > 1 ? lineLegend(looks, marginLeft, asked.width) : null;
  const svg = plotDrawing(
    { name: asked.request.name, title: asked.request.caption, description: reading.join(' ') },
    {
      width: asked.width,
      height: 300 + axis.marginBottom + (legend?.height ?? 0),
      marginTop: 34 + (legend?.height ?? 0),
      marginLeft,
      marginRight,
      marginBottom: axis.marginBottom,
      x: { domain: names, type: 'point', padding: 0.4 },
      y: { domain, nice: true, type: 'linear' },
      marks: [
        ...measureAxisY(label),
        ...axis.marks,
        Plot.ruleY([0], { stroke: paint('rule') }),
        ...breakMarks(breaks, names, asked.width),
        ...series.flatMap((one, at) =>
          seriesMarks(one, looks.get(one.name)!, (at - (series.length - 1) / 2) * 5, names, breaks, style, domain[1]!),
        ),
      ],
    },
  );
  if (legend !== null) svg.children.push(legend.element);
  return { svg, reading, specification: null };
}

/** A point with the stretch it belongs to: a line is not drawn from one stretch into the next. */
type StretchPoint = Point & { readonly stretch: number };

function seriesMarks(
  series: Series,
  look: Look,
  dx: number,
  names: readonly string[],
  breaks: readonly string[],
  style: string,
  top: number,
): Plot.Markish[] {
  const byName = new Map(series.points.map((point) => [point.name, point]));
  const placed = names.map((name, at): StretchPoint => {
    const point = byName.get(name) ?? { ...nothing, name };
    return { ...point, stretch: breaks.filter((from) => names.indexOf(from) <= at).length };
  });
  const drawn = placed.filter((point) => point.value !== null);
  const limited = drawn.filter((point) => point.limits !== null);
  const whiskers = (some: readonly Point[], dash: string | null): Plot.Markish =>
    Plot.ruleX(some, {
      x: 'name',
      dx,
      y1: (point: Point) => point.low ?? 0,
      y2: (point: Point) => upperEnd(point, top),
      stroke: look.stroke,
      strokeWidth: 1,
      strokeOpacity: 0.75,
      ...(dash === null ? {} : { strokeDasharray: dash }),
    });
  return [
    ...(style === 'band'
      ? [
          Plot.areaY(placed, {
            x: 'name',
            z: 'stretch',
            y1: (point: Point) => (point.limits === null ? null : (point.low ?? 0)),
            y2: (point: Point) => (point.limits === null ? null : upperEnd(point, top)),
            fill: look.stroke,
            fillOpacity: 0.14,
          }),
        ]
      : []),
    ...(style === 'whiskers'
      ? [
          whiskers(
            limited.filter((point) => point.limits === 'two'),
            null,
          ),
          whiskers(
            limited.filter((point) => point.limits !== 'two'),
            '3 3',
          ),
        ]
      : []),
    Plot.line(placed, {
      x: 'name',
      y: 'value',
      z: 'stretch',
      dx: style === 'whiskers' ? dx : 0,
      stroke: look.stroke,
      strokeWidth: look.width,
      ...(look.dash === null ? {} : { strokeDasharray: look.dash }),
    }),
    Plot.dot(drawn, {
      x: 'name',
      y: 'value',
      dx: style === 'whiskers' ? dx : 0,
      symbol: markOf(look),
      fill: (point: Point) => (point.limits === 'upper' || look.symbol === 'cross' ? paint('paper') : look.stroke),
      stroke: look.stroke,
      strokeWidth: 1.5,
    }),
  ];
}

const breakWords = 'definition changed';

/** A line where a definition changed, its words on the side that has room for them. */
function breakMarks(breaks: readonly string[], names: readonly string[], width: number): Plot.Markish[] {
  const space = (width - marginLeft - marginRight) / (names.length - 1 + 0.8);
  return breaks.flatMap((name) => {
    const line = marginLeft + (names.indexOf(name) - 0.1) * space;
    const after = line + 4 + textWidth(breakWords, textSize) < width;
    return [
      Plot.ruleX([name], { dx: -space / 2, stroke: paint('alert'), strokeDasharray: '5 3' }),
      Plot.text([name], {
        x: (value: string) => value,
        dx: -space / 2 + (after ? 4 : -4),
        frameAnchor: 'top',
        dy: 2,
        text: () => breakWords,
        textAnchor: after ? 'start' : 'end',
        fontSize: textSize,
        fill: paint('alert'),
      }),
    ];
  });
}

const nothing = {
  value: null,
  low: null,
  high: null,
  limits: null,
  confidence: null,
  numerator: null,
  denominator: null,
  why: null,
  isWithheld: false,
  row: -1,
} as const;

function unknownBreak(name: string, names: readonly string[]): Unfit {
  return {
    code: 'bad-chart-option',
    seen: `breaks=${name}`,
    wanted: `values of the bottom key: ${names.slice(0, 12).join(', ')}`,
    remedy: 'Name the first value that has the new definition.',
  };
}
