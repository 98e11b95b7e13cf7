import * as Plot from '@observablehq/plot';
import { measureAxisX, measureAxisY, textSize, topOf } from '../axes.js';
import { type AskedChart, type ChartKind, type Drawing, sharedOptions, type Unfit } from '../chart-kind.js';
import { paint } from '../colours.js';
import { plotDrawing } from '../plot-drawing.js';
import { namingColumns, numberOf, pointsOf } from '../points.js';
import { shownScale } from '../shown-scale.js';
import { textWidth } from '../text-width.js';

/** Each row as a mark at two of its numbers, with the rows high on both named. */
export const pairs: ChartKind = {
  name: 'pairs',
  shows: 'Each row as a mark at two of its numbers; the rows high on both are filled and named.',
  options: [
    sharedOptions.value,
    { word: 'x', takes: 'column', needed: true, meaning: 'The column of numbers along the bottom.' },
    {
      word: 'x-from',
      takes: 'number',
      needed: false,
      meaning: 'Where high begins along the bottom, as shown; without it, at the middle value.',
    },
  ],
  draw: drawPairs,
};

interface Pair {
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly both: boolean;
}

/** A named pair, with how far its name is moved up or down from its mark, in pixels. */
interface Named extends Pair {
  readonly moved: number;
  readonly after: boolean;
}

const frame = { height: 400, top: 34, left: 58, right: 26, bottom: 48 } as const;
const mostNames = 10;
const lineDepth = 15;

function drawPairs(asked: AskedChart): Drawing | Unfit {
  const across = asked.columns.get('x')!;
  const scale = shownScale(asked.sheet, across);
  const points = pointsOf(asked, namingColumns(asked));
  const known = points.flatMap(({ name, value, row }) => {
    const x = numberOf(asked.sheet.rows[row]!.cells[across.at]!);
    return value === null || x === null ? [] : [{ name, x: x * scale.times, y: value }];
  });
  if (known.length === 0) return nothingToPair();
  const from = asked.settings.get('x-from');
  const middle = {
    x: from === undefined ? middleOf(known.map(({ x }) => x)) : Number(from),
    y: middleOf(known.map(({ y }) => y)),
  };
  const placed = known.map((one): Pair => ({ ...one, both: one.x >= middle.x && one.y >= middle.y && one.y > 0 }));
  const domain = { x: topOf(known.map(({ x }) => x)) * 1.06, y: topOf(known.map(({ y }) => y)) * 1.04 };
  const reading = [
    `Each mark is one ${
      namingColumns(asked)
        .map(({ column }) => column.label)
        .join(' and ') || 'row'
    }; ${from === undefined ? 'the dashed lines are the middle values' : `the dashed lines are ${from} and the middle value`}.`,
    `Filled and named, at or above both: ${listed(placed)}.`,
    ...(known.length < points.length
      ? [`${points.length - known.length} of ${points.length} lack one of the two numbers and are not drawn.`]
      : []),
  ];
  const named = withNames(placed, domain, asked.width);
  const svg = plotDrawing(
    { name: asked.request.name, title: asked.request.caption, description: reading.join(' ') },
    {
      width: asked.width,
      height: frame.height,
      marginTop: frame.top,
      marginLeft: frame.left,
      marginRight: frame.right,
      marginBottom: frame.bottom,
      x: { domain: [0, domain.x], type: 'linear' },
      y: { domain: [0, domain.y], type: 'linear' },
      marks: [
        ...measureAxisY(shownScale(asked.sheet, asked.columns.get('value')!).label),
        ...measureAxisX(scale.label, asked.width),
        Plot.ruleY([0], { stroke: paint('rule') }),
        Plot.ruleX([middle.x], { stroke: paint('soft'), strokeDasharray: '6 4' }),
        Plot.ruleY([middle.y], { stroke: paint('soft'), strokeDasharray: '6 4' }),
        Plot.dot(placed, {
          x: 'x',
          y: 'y',
          r: 4.5,
          fill: (one: Pair) => paint(one.both ? 'accent' : 'paper'),
          stroke: paint('accent'),
          strokeWidth: 1.5,
        }),
        ...named.map((one) =>
          Plot.text([one], {
            x: 'x',
            y: 'y',
            text: 'name',
            textAnchor: one.after ? 'start' : 'end',
            dx: one.after ? 9 : -9,
            dy: one.moved,
            fontSize: textSize,
            fill: paint('ink'),
            stroke: paint('paper'),
            strokeWidth: 4,
          }),
        ),
      ],
    },
  );
  return { svg, reading, specification: null };
}

function middleOf(numbers: readonly number[]): number {
  const rising = [...numbers].sort((one, other) => one - other);
  const half = Math.floor(rising.length / 2);
  return rising.length % 2 === 1 ? rising[half]! : (rising[half - 1]! + rising[half]!) / 2;
}

function listed(placed: readonly Pair[]): string {
  const names = placed.filter(({ both }) => both).map(({ name }) => name);
  return names.length === 0 ? 'none' : names.join(', ');
}

/** The pairs to name, the highest first, their names moved down where they would stand upon one another. */
function withNames(
  placed: readonly Pair[],
  domain: { readonly x: number; readonly y: number },
  width: number,
): readonly Named[] {
  const [wide, deep] = [width - frame.left - frame.right, frame.height - frame.top - frame.bottom];
  const highest = [...placed].filter(({ both }) => both).sort((one, other) => other.y - one.y || one.x - other.x);
  const taken: { left: number; right: number; at: number }[] = [];
  return highest.slice(0, mostNames).map((one) => {
    const [x, wanted] = [(one.x / domain.x) * wide, deep - (one.y / domain.y) * deep];
    const long = textWidth(one.name, textSize) + 12;
    const after = x + long < wide;
    const [left, right] = after ? [x, x + long] : [x - long, x];
    let at = wanted;
    for (const other of taken) {
      if (left < other.right && right > other.left && Math.abs(at - other.at) < lineDepth) at = other.at + lineDepth;
    }
    taken.push({ left, right, at });
    taken.sort((a, b) => a.at - b.at);
    return { ...one, moved: Number((at - wanted).toFixed(1)), after };
  });
}

function nothingToPair(): Unfit {
  return {
    code: 'nothing-to-draw',
    seen: '',
    wanted: 'rows that have both numbers',
    remedy: 'Draw two columns that are both known for some rows.',
  };
}
