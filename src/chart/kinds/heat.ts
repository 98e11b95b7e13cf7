import { s } from 'hastscript';
import type { TopLevelSpec } from 'vega-lite';
import { showNumber } from '../../notebook/shown.js';
import { drawingWidths, spaceForNames, textSize } from '../axes.js';
import { type AskedChart, type ChartKind, type Drawing, sharedOptions, type Unfit } from '../chart-kind.js';
import { colourClasses } from '../colour-classes.js';
import { paint, rampSteps } from '../colours.js';
import { hatchId, hatchPattern, heatLegend, legendDepth, legendWidth } from '../heat-legend.js';
import { keyText, orderedKeys, shortName } from '../key-text.js';
import { pointsOf } from '../points.js';
import { emptyPlaces } from '../reading.js';
import { repeatedName } from '../repeated-name.js';
import { shownScale } from '../shown-scale.js';
import { widestText } from '../text-width.js';
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
  wideOnly: true,
  draw: drawHeat,
};

/** A field of the chart. `tone` is a class of the ramp, or 0 for a hatched one. */
interface Field {
  readonly x: string;
  readonly y: string;
  readonly shown: string;
  readonly tone: number;
}

const rowDepth = 28;

/** What stands where the number is there but may not be told. */
const withheldMark = '×';

/** What stands where no case was seen: never a bare zero. */
const none = 'none';

function drawHeat(asked: AskedChart): Drawing | Unfit {
  const [x, y] = [asked.columns.get('x')!, asked.columns.get('y')!];
  const points = pointsOf(asked, [y, x]);
  const repeated = repeatedName(
    points.map((point) => point.name),
    'x',
  );
  if (repeated !== null) return repeated;
  const fewest = Number(asked.settings.get('fewest') ?? 0);
  const enough = (at: number): boolean => points[at]!.denominator === null || points[at]!.denominator >= fewest;
  const classes = colourClasses(points.flatMap(({ value }, at) => (value !== null && enough(at) ? [value] : [])));
  const fields = asked.sheet.rows.map(({ cells }, at): Field => {
    const { value } = points[at]!;
    const tone = value === null || !enough(at) ? 0 : classes.classOf(value);
    return {
      x: shortName(keyText(cells[x.at]!)),
      y: keyText(cells[y.at]!),
      shown: points[at]!.isWithheld ? withheldMark : tone === 0 ? '' : shownIn(at),
      tone,
    };
  });
  const names = { x: orderedKeys(asked.sheet, x).map(shortName), y: orderedKeys(asked.sheet, y) };
  const label = shownScale(asked.sheet, asked.columns.get('value')!).label;
  const hatched = fields.filter((field) => field.tone === 0).length;
  const frame = frameOf(fields, names, legendWidth(classes, label, hatched > 0));
  const reading = [
    `Each field holds its number: ${label.charAt(0).toLowerCase()}${label.slice(1)}; the stronger the tone, the greater.`,
    ...(fields.some((field) => field.shown === none) ? ['none: no case was seen; the table has the upper limit.'] : []),
    ...(hatched > 0
      ? [`${hatched} hatched: no value${fewest > 0 ? `, or counted from fewer than ${fewest}` : ''}.`]
      : []),
    ...(points.some((point) => point.isWithheld) ? [`${withheldMark}: withheld, which is not zero.`] : []),
    ...emptyPlaces(names.x.length * names.y.length - fields.length),
  ];
  const said = { name: asked.request.name, title: asked.request.caption, description: reading.join(' ') };
  const specification = heatSpecification(fields, names, frame, said.name, [x.column.label, y.column.label]);
  const svg = vegaDrawing(said, specification, frame);
  const legendTop = frame.top + frame.height + frame.bottom - legendDepth;
  svg.children.push(
    s('defs', [hatchPattern(said.name)]),
    heatLegend(classes, said.name, label, frame.left, legendTop, hatched > 0),
  );
  return { svg, reading, specification: specification as unknown as Record<string, unknown> };

  function shownIn(row: number): string {
    if (points[row]!.limits === 'upper') return none;
    const value = asked.columns.get('value')!;
    const cell = asked.sheet.rows[row]!.cells[value.at]!;
    return cell.kind === 'number' && cell.value !== null ? showNumber(cell.value, value.column.shownAs, cell.unit) : '';
  }
}

/** The widest that a field grows to hold a name below it; longer names stand slanted. */
const widestField = 64;
const longestSlant = 150;

function slanted(names: readonly string[]): boolean {
  return widestText(names, textSize) + 6 > widestField;
}

function frameOf(
  fields: readonly Field[],
  names: { readonly x: readonly string[]; readonly y: readonly string[] },
  legend: number,
): Frame {
  const left = spaceForNames(names.y, drawingWidths.wide);
  const slant = slanted(names.x);
  const shown = fields.map((field) => field.shown);
  const inside = widestText(slant ? shown : [...shown, ...names.x], textSize) + 8;
  const room = Math.floor((drawingWidths.wide - left - 10) / names.x.length);
  const across = Math.max(inside, 22, Math.min(widestField, room));
  const depth = slant ? Math.min(longestSlant, widestText(names.x, textSize)) * 0.6 : 0;
  return {
    width: across * names.x.length,
    height: rowDepth * names.y.length,
    left: slant ? Math.max(left, 100) : left,
    right: Math.max(10, legend - across * names.x.length),
    top: 6,
    bottom: 48 + depth + legendDepth,
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
          title: across.charAt(0).toUpperCase() + across.slice(1),
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
        mark: { type: 'text', fontSize: 11, baseline: 'middle' },
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
