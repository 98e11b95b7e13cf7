import { s } from 'hastscript';
import type { TopLevelSpec } from 'vega-lite';
import { showNumber } from '../../notebook/shown.js';
import { drawingWidths, textSize } from '../axes.js';
import {
  type AskedChart,
  type ChartKind,
  type Drawing,
  type PlacedColumn,
  sharedOptions,
  type Unfit,
} from '../chart-kind.js';
import { colourClasses } from '../colour-classes.js';
import { paint, rampSteps } from '../colours.js';
import { fieldTextSize, fits, heatFrame, legendLeft, longestSlant, slanted } from '../heat-frame.js';
import { hatchId, hatchPattern, heatLegend, heatLegendOf } from '../heat-legend.js';
import { keyText, orderedKeys, shortName } from '../key-text.js';
import { pointsOf } from '../points.js';
import { emptyPlaces } from '../reading.js';
import { repeatedName } from '../repeated-name.js';
import { shownScale } from '../shown-scale.js';
import { type Frame, vegaDrawing } from '../vega-drawing.js';

/** Two keys crossed, the value in each field as a number upon a tone. */
export const heat: ChartKind = {
  name: 'heat',
  shows: 'Two keys crossed, with the value in each field as a number upon a tone; hatched where there is none.',
  options: [
    sharedOptions.value,
    { word: 'x', takes: 'column', needed: true, meaning: 'The column along the bottom.' },
    { word: 'y', takes: 'column', needed: true, meaning: 'The column down the side.' },
    {
      word: 'fewest',
      takes: 'number',
      needed: false,
      meaning: 'Fields counted from fewer than this are hatched, not toned; without it, none are.',
    },
  ],
  draw: drawHeat,
};

/** A field of the chart. `tone` is a class of the ramp, or 0 for a hatched one. */
interface Field {
  readonly x: string;
  readonly y: string;
  readonly shown: string;
  readonly tone: number;
}

/** What stands where the number is there but may not be told. */
const withheldMark = '×';

/** What stands where no case was seen: never a bare zero. */
const none = 'none';

function drawHeat(asked: AskedChart): Drawing | Unfit {
  const [across, down] = [asked.columns.get('x')!, asked.columns.get('y')!];
  const layout = (x: PlacedColumn, y: PlacedColumn) => ({
    x,
    y,
    names: { x: orderedKeys(asked.sheet, x).map(shortName), y: orderedKeys(asked.sheet, y) },
  });
  const points = pointsOf(asked, [down, across]);
  const repeated = repeatedName(
    points.map((point) => point.name),
    'x',
  );
  if (repeated !== null) return repeated;
  const fewest = Number(asked.settings.get('fewest') ?? 0);
  const enough = (at: number): boolean => points[at]!.denominator === null || points[at]!.denominator >= fewest;
  const classes = colourClasses(points.flatMap(({ value }, at) => (value !== null && enough(at) ? [value] : [])));
  const tones = points.map(({ value }, at) => (value === null || !enough(at) ? 0 : classes.classOf(value)));
  const shown = tones.map((tone, at) => (points[at]!.isWithheld ? withheldMark : tone === 0 ? '' : shownIn(at)));
  const label = shownScale(asked.sheet, asked.columns.get('value')!).label;
  const hatched = tones.filter((tone) => tone === 0).length;
  const legend = heatLegendOf(classes, label, hatched > 0, asked.width);
  // Where a telephone has no room for the columns as asked, it may have for the rows: the numbers are the same.
  const layouts =
    asked.width < drawingWidths.wide ? [layout(across, down), layout(down, across)] : [layout(across, down)];
  const framed = layouts.map((one) => ({ ...one, frame: heatFrame(shown, one.names, legend, asked.width) }));
  const chosen = asked.width < drawingWidths.wide ? framed.find(({ frame }) => fits(frame, asked.width)) : framed[0];
  if (chosen === undefined) return noRoom(asked);
  const { x, y, names, frame } = chosen;
  const fields = asked.sheet.rows.map(({ cells }, at): Field => {
    return { x: shortName(keyText(cells[x.at]!)), y: keyText(cells[y.at]!), shown: shown[at]!, tone: tones[at]! };
  });
  const reading = [
    `Each field holds its number: ${label.charAt(0).toLowerCase()}${label.slice(1)}; the stronger the tone, the greater.`,
    ...(shown.includes(none) ? ['none: no case was seen; the table has the upper limit.'] : []),
    ...(hatched > 0
      ? [`${hatched} hatched: no value${fewest > 0 ? `, or counted from fewer than ${fewest}` : ''}.`]
      : []),
    ...(points.some((point) => point.isWithheld) ? [`${withheldMark}: withheld, which is not zero.`] : []),
    ...emptyPlaces(names.x.length * names.y.length - fields.length),
  ];
  const said = { name: asked.request.name, title: asked.request.caption, description: reading.join(' ') };
  const specification = heatSpecification(fields, names, frame, said.name, [x.column.label, y.column.label]);
  const svg = vegaDrawing(said, specification, frame);
  const legendTop = frame.top + frame.height + frame.bottom - legend.depth;
  svg.children.push(
    s('defs', [hatchPattern(said.name)]),
    heatLegend(legend, said.name, legendLeft(frame, asked.width), legendTop),
    ...(x === across ? [] : [s('text', { x: 0, y: 12, fill: paint('soft') }, [capital(y.column.label)])]),
  );
  return { svg, reading, specification: specification as unknown as Record<string, unknown> };

  function shownIn(row: number): string {
    if (points[row]!.limits === 'upper') return none;
    const value = asked.columns.get('value')!;
    const cell = asked.sheet.rows[row]!.cells[value.at]!;
    return cell.kind === 'number' && cell.value !== null ? showNumber(cell.value, value.column.shownAs, cell.unit) : '';
  }
}

function capital(label: string): string {
  return label.charAt(0).toUpperCase() + label.slice(1);
}

function noRoom(asked: AskedChart): Unfit {
  return {
    code: 'no-room',
    seen: asked.sheet.name,
    wanted: `fields that fit into ${asked.width} pixels`,
    remedy: 'It is drawn wide.',
  };
}

function heatSpecification(
  fields: readonly Field[],
  names: { readonly x: readonly string[]; readonly y: readonly string[] },
  frame: Frame,
  chart: string,
  [across, down]: readonly [string, string],
): TopLevelSpec {
  const tones = [0, ...Array.from({ length: rampSteps }, (_, at) => at + 1)];
  const scale = (range: readonly string[]) => ({ domain: tones, range: [...range] });
  const toned = (name: string) => tones.slice(1).map((tone) => paint(`${name}-${tone}`));
  const axis = { title: null, domain: false, ticks: false, labelFontSize: textSize, labelColor: paint('ink') } as const;
  return {
    $schema: 'https://vega.github.io/schema/vega-lite/v6.json',
    description: `${down} by ${across}`,
    width: frame.width,
    height: frame.height,
    padding: { left: frame.left, right: frame.right, top: frame.top, bottom: frame.bottom },
    autosize: { type: 'none' },
    background: 'transparent',
    data: { values: fields as Field[] },
    encoding: {
      x: {
        field: 'x',
        type: 'ordinal',
        scale: { domain: [...names.x], padding: 0.03 },
        axis: {
          ...axis,
          title: capital(across),
          titleFontSize: textSize,
          titleFontWeight: 'normal',
          titleColor: paint('soft'),
          titlePadding: 10,
          ...(slanted(names.x)
            ? { labelAngle: -35, labelAlign: 'right', labelBaseline: 'middle', labelLimit: longestSlant }
            : { labelAngle: 0 }),
          labelOverlap: false,
        },
      },
      y: {
        field: 'y',
        type: 'ordinal',
        scale: { domain: [...names.y], padding: 0.06 },
        axis: { ...axis, labelLimit: 190 },
      },
    },
    layer: [
      {
        mark: { type: 'rect', stroke: paint('rule'), strokeWidth: 0.5 },
        encoding: {
          fill: {
            field: 'tone',
            type: 'ordinal',
            scale: scale([`url(#${hatchId(chart)})`, ...toned('ramp')]),
            legend: null,
          },
        },
      },
      {
        mark: { type: 'text', fontSize: fieldTextSize, baseline: 'middle' },
        encoding: {
          text: { field: 'shown' },
          fill: { field: 'tone', type: 'ordinal', scale: scale([paint('ink'), ...toned('ramp-ink')]), legend: null },
        },
      },
    ],
    resolve: { scale: { fill: 'independent' } },
    config: { view: { stroke: null } },
  };
}
