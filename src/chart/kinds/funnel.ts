import * as Plot from '@observablehq/plot';
import { measureAxisX, measureAxisY, textSize, topOf } from '../axes.js';
import { type AskedChart, type ChartKind, type Drawing, sharedOptions, type Unfit } from '../chart-kind.js';
import { paint } from '../colours.js';
import { plotDrawing } from '../plot-drawing.js';
import { namingColumns, numberOf, type Point, pointsOf } from '../points.js';
import { shownScale } from '../shown-scale.js';
import { textWidth } from '../text-width.js';

const limit = (word: string, meaning: string, needed: boolean) => ({ word, takes: 'column', needed, meaning }) as const;

/** Rates against what they were counted from, between limits within which chance alone would leave them. */
export const funnel: ChartKind = {
  name: 'funnel',
  shows: 'Each rate against the number it was counted from, between limits within which chance alone would leave it.',
  options: [
    sharedOptions.value,
    {
      word: 'x',
      takes: 'column',
      needed: false,
      meaning: 'The column of denominators; without it, what the rates themselves were counted from.',
    },
    limit('inner-low', 'The column of lower inner limits, such as 95 %.', true),
    limit('inner-high', 'The column of upper inner limits.', true),
    limit('outer-low', 'The column of lower outer limits, such as 99.8 %; without it, no outer limits.', false),
    limit('outer-high', 'The column of upper outer limits.', false),
  ],
  draw: drawFunnel,
};

/** A rate in its place, with the limits there. */
interface Placed {
  readonly name: string;
  readonly x: number;
  readonly value: number;
  readonly limits: ReadonlyMap<string, number>;
  /** How many half-widths of the inner limits it lies from their middle. */
  readonly distance: number;
}

const limitWords = ['inner-low', 'inner-high', 'outer-low', 'outer-high'];
const mostLabels = 4;

function drawFunnel(asked: AskedChart): Drawing | Unfit {
  const points = pointsOf(asked, namingColumns(asked));
  const placed = points.flatMap((point) => placedOf(asked, point)).sort((a, b) => a.x - b.x);
  if (placed.length === 0) return noDenominators();
  const { label } = shownScale(asked.sheet, asked.columns.get('value')!);
  const right = topOf(placed.map((one) => one.x)) * 1.04;
  const top = topOf(placed.flatMap((one) => [one.value, ...one.limits.values()]));
  const named = labelled(placed);
  const outer = asked.columns.has('outer-low') || asked.columns.has('outer-high');
  const reading = [
    `Dashed lines: inner limits${outer ? '; dotted lines: outer limits' : ''}. A filled mark lies outside the inner ones.`,
    'Within the limits, chance alone may be the reason.',
    'Only the rows farthest from the middle are named; this is not a ranking.',
    ...(placed.length < points.length
      ? [`${points.length - placed.length} of ${points.length} have no value or denominator and are not drawn.`]
      : []),
  ];
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
        ...limitWords.map((word) =>
          Plot.line(
            placed.filter((one) => one.limits.has(word)),
            {
              x: 'x',
              y: (one: Placed) => one.limits.get(word)!,
              curve: 'monotone-x',
              stroke: paint('soft'),
              strokeDasharray: word.startsWith('inner') ? '6 4' : '1.5 3',
            },
          ),
        ),
        Plot.dot(placed, {
          x: 'x',
          y: 'value',
          r: 4.5,
          fill: (one: Placed) => paint(one.distance > 1 ? 'accent' : 'paper'),
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

function placedOf(asked: AskedChart, point: Point): Placed[] {
  const cells = asked.sheet.rows[point.row]!.cells;
  const column = asked.columns.get('x');
  const x = column === undefined ? point.denominator : numberOf(cells[column.at]!);
  if (x === null || point.value === null) return [];
  const limits = new Map<string, number>();
  for (const word of limitWords) {
    const placed = asked.columns.get(word);
    const number = placed === undefined ? null : numberOf(cells[placed.at]!);
    if (number !== null) limits.set(word, number * shownScale(asked.sheet, placed!).times);
  }
  const [low, high] = [limits.get('inner-low'), limits.get('inner-high')];
  const middle = low === undefined || high === undefined ? null : (low + high) / 2;
  const distance = middle === null || high === low ? 0 : Math.abs(point.value - middle) / (high! - middle);
  return [{ name: point.name, x, value: point.value, limits, distance }];
}

/** The few rows farthest out; where none lies outside its limits, the two nearest to them. */
function labelled(placed: readonly Placed[]): readonly Placed[] {
  const farthest = [...placed].sort((a, b) => b.distance - a.distance || a.x - b.x);
  const outside = farthest.filter((one) => one.distance > 1);
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
