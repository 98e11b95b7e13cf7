import * as Plot from '@observablehq/plot';
import { measureAxisX, nameAxis, rowHeight, spaceForNames, textSize } from '../axes.js';
import { type AskedChart, type ChartKind, type Drawing, sharedOptions, type Unfit } from '../chart-kind.js';
import { paint } from '../colours.js';
import { keyText } from '../key-text.js';
import { plotDrawing } from '../plot-drawing.js';
import { keyColumns, numberOf } from '../points.js';
import { repeatedName } from '../repeated-name.js';
import { shownScale, tickText } from '../shown-scale.js';

/** A bar a row between two values, about the value there is: how far each input moves a figure. */
export const swings: ChartKind = {
  name: 'swings',
  shows:
    'One bar for each input of a sheet of sensitivity, from the figure at its lowest plausible value to that at its highest, and where the conclusion turns.',
  options: [
    { ...sharedOptions.value, meaning: 'The column with the figure as it is.' },
    { word: 'from', takes: 'column', needed: true, meaning: 'The column with the figure at the lowest value.' },
    { word: 'to', takes: 'column', needed: true, meaning: 'The column with the figure at the highest value.' },
  ],
  draw: drawSwings,
};

interface Swing {
  readonly name: string;
  readonly from: number;
  readonly to: number;
}

function drawSwings(asked: AskedChart): Drawing | Unfit {
  const [value, from, to] = ['value', 'from', 'to'].map((word) => asked.columns.get(word)!);
  const { times, label } = shownScale(asked.sheet, value!);
  const key = keyColumns(asked)[0] ?? value!;
  const names = asked.sheet.rows.map(({ cells }) => keyText(cells[key.at]!));
  const repeated = repeatedName(names, 'value');
  if (repeated !== null) return repeated;
  const ends = asked.sheet.rows.map(({ cells }, row) => {
    const [low, high] = [numberOf(cells[from!.at]!), numberOf(cells[to!.at]!)];
    return low === null || high === null ? null : { name: names[row]!, from: low * times, to: high * times };
  });
  const drawn = ends.filter((swing): swing is Swing => swing !== null);
  const first = asked.sheet.rows[0]!.cells[value!.at]!;
  const centre = (numberOf(first) ?? 0) * times;
  const threshold = (asked.sheet.turnsAt ?? 0) * times;
  const numbers = [centre, threshold, ...drawn.flatMap((swing) => [swing.from, swing.to])];
  const absent = names.length - drawn.length;
  const reading = [
    'Each bar runs from the figure at the input’s lowest plausible value (hollow end) to that at its highest (filled end), the other inputs staying as they are.',
    `The thin upright line is the figure as it is, ${tickText(Number(centre.toPrecision(4)))}; the dashed one is where the conclusion turns, ${tickText(Number(threshold.toPrecision(4)))}: a bar that crosses it can turn it.`,
    ...(absent === 0 ? [] : [`${absent} of ${names.length} have no value at one end and are not drawn.`]),
  ];
  const end = (of: 'from' | 'to', fill: string): Plot.Markish =>
    Plot.dot(drawn, { y: 'name', x: of, r: 5, fill: paint(fill), stroke: paint('accent'), strokeWidth: 1.8 });
  const svg = plotDrawing(
    { name: asked.request.name, title: asked.request.caption, description: reading.join(' ') },
    {
      width: asked.width,
      height: names.length * (rowHeight(names, asked.width) + 4) + 58,
      marginTop: 6,
      marginRight: 26,
      marginBottom: 48,
      marginLeft: spaceForNames(names, asked.width),
      x: { domain: [Math.min(...numbers), Math.max(...numbers)], nice: true, type: 'linear' },
      y: { domain: names, type: 'point', padding: 0.6 },
      marks: [
        ...measureAxisX(label, asked.width),
        nameAxis(names, asked.width),
        Plot.ruleY(drawn, {
          y: 'name',
          x1: 'from',
          x2: 'to',
          stroke: paint('accent'),
          strokeWidth: 7,
          strokeOpacity: 0.45,
        }),
        Plot.ruleX([centre], { stroke: paint('ink'), strokeWidth: 1 }),
        Plot.ruleX([threshold], { stroke: paint('alert'), strokeWidth: 1.5, strokeDasharray: '5 3' }),
        end('from', 'paper'),
        end('to', 'accent'),
        ...missing(names, ends, centre),
      ],
    },
  );
  return { svg, reading, specification: null };
}

function missing(names: readonly string[], ends: readonly (Swing | null)[], centre: number): Plot.Markish[] {
  const without = names.filter((_, row) => ends[row] === null).map((name) => ({ name, centre }));
  return without.length === 0
    ? []
    : [
        Plot.text(without, {
          y: 'name',
          x: 'centre',
          dx: 8,
          text: () => 'no value at one end',
          textAnchor: 'start',
          fontStyle: 'italic',
          fontSize: textSize,
          fill: paint('soft'),
        }),
      ];
}
