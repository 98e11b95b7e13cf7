import * as Plot from '@observablehq/plot';
import { measureAxisX, nameAxis, rowHeight, spaceForNames, textSize } from '../axes.js';
import { type AskedChart, type ChartKind, type Drawing, sharedOptions, type Unfit } from '../chart-kind.js';
import { paint } from '../colours.js';
import { plotDrawing } from '../plot-drawing.js';
import { namingColumns, pointsOf } from '../points.js';
import { repeatedName } from '../repeated-name.js';
import { shownScale, tickText } from '../shown-scale.js';

/** Changes that add up, one below the other, and what they come to. */
export const bridge: ChartKind = {
  name: 'bridge',
  shows: 'Changes that add up: each bar begins where the one above it ends, and the last is what they come to.',
  options: [{ ...sharedOptions.value, meaning: 'The column of changes, such as spent less planned.' }],
  draw: drawBridge,
};

const inAll = 'in all';

function drawBridge(asked: AskedChart): Drawing | Unfit {
  const points = pointsOf(asked, namingColumns(asked));
  const known = points.filter((point) => point.value !== null);
  const names = [...known.map(({ name }) => name), inAll];
  const repeated = repeatedName(names, 'value');
  if (repeated !== null) return repeated;
  const { label } = shownScale(asked.sheet, asked.columns.get('value')!);
  let sum = 0;
  const bars = known.map(({ name, value }) => {
    const from = sum;
    sum += value!;
    return { name, from, to: sum, change: value!, whole: false };
  });
  const all = [...bars, { name: inAll, from: 0, to: sum, change: sum, whole: true }];
  const ends = [0, ...all.flatMap(({ from, to }) => [from, to])];
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  // A span too small to be cut into ticks is drawn as none.
  const room = (high - low > 1e-300 ? high - low : 1) * 0.14;
  // A small change must not read as none.
  const shown = (value: number): number => (Math.abs(value) < 10 ? Number(value.toPrecision(2)) : Math.round(value));
  const signed = (value: number): string => (value > 0 ? '+' : '') + tickText(shown(value));
  const absent = points.length - known.length;
  const reading = [
    'Each bar begins where the one above it ends; the number beside it is its change, with its sign. The last is what all come to.',
    ...(absent === 0 ? [] : [`${absent} of ${points.length} without a value: not drawn, and not zero.`]),
  ];
  const svg = plotDrawing(
    { name: asked.request.name, title: asked.request.caption, description: reading.join(' ') },
    {
      width: asked.width,
      height: names.length * rowHeight(names, asked.width) + 58,
      marginTop: 6,
      marginRight: 24,
      marginBottom: 48,
      marginLeft: spaceForNames(names, asked.width),
      x: { domain: [low - room, high + room], nice: true, type: 'linear' },
      y: { domain: names, type: 'band', padding: 0.35 },
      marks: [
        ...measureAxisX(label, asked.width),
        nameAxis(names, asked.width),
        Plot.ruleX([0], { stroke: paint('rule') }),
        Plot.barX(all, {
          y: 'name',
          x1: 'from',
          x2: 'to',
          fill: (bar: (typeof all)[number]) => paint(bar.whole ? 'ramp-4' : bar.change > 0 ? 'accent' : 'accent-wash'),
          stroke: paint('accent'),
        }),
        Plot.text(all, {
          y: 'name',
          x: (bar: (typeof all)[number]) => Math.max(bar.from, bar.to),
          dx: 6,
          text: (bar: (typeof all)[number]) => signed(bar.change),
          textAnchor: 'start',
          fontSize: textSize,
          fill: paint('ink'),
        }),
      ],
    },
  );
  return { svg, reading, specification: null };
}
