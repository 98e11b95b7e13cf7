import * as Plot from '@observablehq/plot';
import { enoughEvents } from '../../finding/small-numbers.js';
import { funnelChances, funnelLimit } from '../../statistic/funnel/limits.js';
import { measureAxisX, measureAxisY, textSize, topOf } from '../axes.js';
import { type AskedChart, type ChartKind, type Drawing, sharedOptions, type Unfit } from '../chart-kind.js';
import { paint } from '../colours.js';
import { type FunnelPoint, funnelCurves, isSize } from '../funnel-curves.js';
import { plotDrawing } from '../plot-drawing.js';
import { namingColumns, numberOf, type Point, pointsOf } from '../points.js';
import { shownScale } from '../shown-scale.js';
import { textWidth } from '../text-width.js';

/** Rates against what they were counted from, between limits within which chance alone would leave them. */
export const funnel: ChartKind = {
  name: 'funnel',
  shows:
    'Each rate against the number it was counted from, between the exact binomial limits (95 and 99.8 %) within which chance alone would leave it around one rate.',
  options: [
    sharedOptions.value,
    {
      word: 'x',
      takes: 'column',
      needed: false,
      meaning: 'The column of denominators; without it, what the rates themselves were counted from.',
    },
    {
      word: 'around',
      takes: 'column',
      needed: true,
      meaning:
        'The column of the rate that the limits lie around, the same in every row, such as that of all stations.',
    },
  ],
  draw: drawFunnel,
};

/** A rate in its place. */
interface Placed {
  readonly name: string;
  readonly x: number;
  readonly value: number;
  /** How many half-widths of the inner limits it lies from their middle; 0 without limits. */
  readonly distance: number;
  readonly isOutside: boolean;
}

const mostLabels = 4;

function drawFunnel(asked: AskedChart): Drawing | Unfit {
  const points = pointsOf(asked, namingColumns(asked));
  const middles = [...new Set(aroundOf(asked))];
  if (middles.length > 1) return severalMiddles(asked, middles);
  const middle = middles[0] ?? null;
  const { label, times } = shownScale(asked.sheet, asked.columns.get('value')!);
  const placed = points.flatMap((point) => placedOf(asked, point, middle)).sort((a, b) => a.x - b.x);
  if (placed.length === 0) return noDenominators();
  const right = topOf(placed.map((one) => one.x)) * 1.04;
  const curves = middle === null ? [] : funnelCurves(middle, placed[0]!.x, right);
  const top = topOf([
    ...placed.map((one) => one.value),
    ...curves.flatMap((curve) => curve.points.map((at) => at.proportion * times)),
  ]);
  const named = labelled(placed);
  const reading = readingOf(curves.length > 0, points.length - placed.length, points.length);
  const svg = plotDrawing(
    { name: asked.request.name, title: asked.request.caption, description: reading.join(' ') },
    {
      width: asked.width,
      height: 372,
      marginTop: 34,
      marginLeft: 58,
      marginRight: 26,
      marginBottom: 48,
      x: { domain: [0, right], nice: true, type: 'linear' },
      y: { domain: [0, top], nice: true, type: 'linear' },
      marks: [
        ...measureAxisY(label),
        ...measureAxisX(denominatorLabel(asked), asked.width),
        Plot.ruleY([0], { stroke: paint('rule') }),
        ...(middle === null ? [] : [Plot.ruleY([middle * times], { stroke: paint('soft') })]),
        ...curves.map((curve) =>
          Plot.line(curve.points, {
            x: 'trials',
            y: (at: FunnelPoint) => at.proportion * times,
            stroke: paint('soft'),
            strokeDasharray: curve.isInner ? '6 4' : '1.5 3',
          }),
        ),
        Plot.dot(placed, {
          x: 'x',
          y: 'value',
          r: 4.5,
          fill: (one: Placed) => paint(one.isOutside ? 'accent' : 'paper'),
          stroke: paint('accent'),
          strokeWidth: 1.5,
        }),
        ...['start', 'end'].map((textAnchor) =>
          Plot.text(
            named.filter((one) => (endsBefore(one, right, asked.width) ? 'start' : 'end') === textAnchor),
            {
              x: 'x',
              y: 'value',
              text: 'name',
              textAnchor: textAnchor as 'start' | 'end',
              dx: textAnchor === 'start' ? 9 : -9,
              fontSize: textSize,
              fill: paint('ink'),
              stroke: paint('paper'),
              strokeWidth: 4,
            },
          ),
        ),
      ],
    },
  );
  return { svg, reading, specification: null };
}

function readingOf(isLimited: boolean, undrawn: number, all: number): string[] {
  return [
    ...(isLimited
      ? [
          'The level line is the rate of all; dashed lines: 95 % limits around it; dotted lines: 99.8 % limits.',
          `A filled mark lies outside the dashed ones; one of fewer than ${enoughEvents} cases is never filled.`,
          'Within the limits, chance alone may be the reason.',
        ]
      : [
          'Without one rate strictly between nothing and all, and whole numbers counted from, there are no limits to draw.',
        ]),
    'Only the rows farthest from the middle are named; this is not a ranking.',
    ...(undrawn > 0 ? [`${undrawn} of ${all} have no value or denominator and are not drawn.`] : []),
  ];
}

/** The rates that the limits are asked to lie around, as proportions; those that leave chance no room are none. */
function aroundOf(asked: AskedChart): number[] {
  const { at } = asked.columns.get('around')!;
  return asked.sheet.rows.flatMap(({ cells }) => {
    const rate = numberOf(cells[at]!);
    return rate !== null && rate > 0 && rate < 1 ? [rate] : [];
  });
}

function placedOf(asked: AskedChart, point: Point, middle: number | null): Placed[] {
  const cell = asked.sheet.rows[point.row]!.cells;
  const column = asked.columns.get('x');
  const x = column === undefined ? point.denominator : numberOf(cell[column.at]!);
  const rate = numberOf(cell[asked.columns.get('value')!.at]!);
  if (x === null || rate === null || point.value === null) return [];
  const distance = middle === null ? 0 : distanceFrom(middle, rate, x);
  const isOutside = distance > 1 && rate * x >= enoughEvents - 0.5;
  return [{ name: point.name, x, value: point.value, distance, isOutside }];
}

/** How many half-widths of the inner limits a rate lies from their middle; 0 where they leave no width. */
function distanceFrom(target: number, rate: number, trials: number): number {
  if (!isSize(trials)) return 0;
  const [low, high] = [funnelChances.innerLow, funnelChances.innerHigh].map(
    (chance) => funnelLimit(target, trials, chance).proportion,
  );
  const half = (high! - low!) / 2;
  return half > 0 ? Math.abs(rate - (low! + half)) / half : 0;
}

/** The few rows farthest out; where none lies outside its limits, the two nearest to them. */
function labelled(placed: readonly Placed[]): readonly Placed[] {
  const farthest = [...placed].sort((a, b) => b.distance - a.distance || a.x - b.x);
  const outside = farthest.filter((one) => one.isOutside);
  return outside.length > 0 ? outside.slice(0, mostLabels) : farthest.slice(0, 2);
}

function endsBefore(one: Placed, right: number, width: number): boolean {
  return (one.x / right) * (width - 84) + textWidth(one.name, textSize) + 9 < width - 84;
}

function denominatorLabel(asked: AskedChart): string {
  const column = asked.columns.get('x');
  return column === undefined ? 'Number it was counted from' : shownScale(asked.sheet, column).label;
}

function noDenominators(): Unfit {
  return {
    code: 'not-rates',
    seen: '',
    wanted: 'rates that know what they were counted from',
    remedy: 'Draw a column made with rate(…) or share(…), or name the denominators with "x=".',
  };
}

function severalMiddles(asked: AskedChart, middles: readonly number[]): Unfit {
  return {
    code: 'several-middles',
    seen: `${middles.length} rates in "${asked.columns.get('around')!.column.name}"`,
    wanted: 'one rate for all rows, since limits around several cannot be drawn as one funnel',
    remedy: 'Draw a sheet whose finding was asked of all rows together, or one for each group.',
  };
}
