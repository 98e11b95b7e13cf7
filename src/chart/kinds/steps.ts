import * as Plot from '@observablehq/plot';
import { measureAxisX, measureAxisY, topOf } from '../axes.js';
import { type AskedChart, type ChartKind, type Drawing, sharedOptions, type Unfit } from '../chart-kind.js';
import { paint } from '../colours.js';
import { lineLegend } from '../legend.js';
import { plotDrawing } from '../plot-drawing.js';
import { numberOf, type Point } from '../points.js';
import { looksOf } from '../series.js';
import { type Series, seriesOf } from '../series-points.js';
import { shownScale, tickText } from '../shown-scale.js';
import { thinned } from '../thinned.js';

/** A share that falls in steps as time passes, with its limits as a band. */
export const steps: ChartKind = {
  name: 'steps',
  shows: 'A share that changes in steps as time passes, with its interval as a band.',
  options: [
    sharedOptions.value,
    { word: 'x', takes: 'column', needed: true, meaning: 'The column of numbers along the bottom, such as minutes.' },
    {
      word: 'until',
      takes: 'number',
      needed: false,
      meaning: 'Where the bottom axis ends, in its own unit; without it, at the last step.',
    },
    sharedOptions.by,
    sharedOptions.low,
    sharedOptions.high,
  ],
  draw: drawSteps,
};

/** More steps than this cannot be told apart at the width of a page. */
const mostSteps = 160;

const marginLeft = 58;

/** A point with its place along the bottom. */
type Step = Point & { readonly x: number };

function drawSteps(asked: AskedChart): Drawing | Unfit {
  const along = asked.columns.get('x')!;
  const across = shownScale(asked.sheet, along);
  const series = seriesOf(asked, along);
  if ('code' in series) return series;
  const { label, times } = shownScale(asked.sheet, asked.columns.get('value')!);
  const known = series.map(({ name, points }) => ({ name, steps: stepsOf(points) }));
  const until = asked.settings.get('until');
  const end =
    until === undefined ? topOf(known.flatMap(({ steps: some }) => some.map((step) => step.x))) : Number(until);
  const beyond = known.flatMap(({ steps: some }) => some).filter((step) => step.x > end).length;
  const stepped = known.map(({ name, steps: some }) => ({ name, steps: thinned(cutAt(some, end), mostSteps) }));
  const all = stepped.flatMap((one) => one.steps);
  if (all.length === 0) return noSteps(along.column.name);
  const looks = looksOf(stepped.map(({ name }) => name));
  const absent = series.flatMap(({ points }) => points).filter((point) => point.value === null).length;
  const reading = [
    'Each line falls where a time ends; the shading is its interval.',
    ...(beyond > 0 ? [`${beyond} steps lie beyond ${tickText(end)}, where the axis ends; the table has them.`] : []),
    ...(absent > 0 ? [`${absent} rows have no value and are not drawn.`] : []),
  ];
  const legend = stepped.length > 1 ? lineLegend(looks, marginLeft, asked.width, false) : null;
  const svg = plotDrawing(
    { name: asked.request.name, title: asked.request.caption, description: reading.join(' ') },
    {
      width: asked.width,
      height: 348 + (legend?.height ?? 0),
      marginTop: 34 + (legend?.height ?? 0),
      marginLeft,
      marginRight: 26,
      marginBottom: 48,
      x: { domain: [Math.min(0, ...all.map((step) => step.x)), end], type: 'linear' },
      y: { domain: [0, Math.max(times, topOf(all.flatMap((step) => [step.value, step.high])))], type: 'linear' },
      marks: [
        ...measureAxisY(label),
        ...measureAxisX(across.label, asked.width),
        Plot.ruleY([0], { stroke: paint('rule') }),
        ...stepped.flatMap(({ name, steps: some }) => {
          const look = looks.get(name)!;
          return [
            Plot.areaY(some, {
              x: 'x',
              y1: (step: Step) => (step.limits === null ? null : (step.low ?? 0)),
              y2: (step: Step) => (step.limits === null ? null : (step.high ?? times)),
              curve: 'step-after',
              fill: look.stroke,
              fillOpacity: 0.14,
            }),
            Plot.line(some, {
              x: 'x',
              y: 'value',
              curve: 'step-after',
              stroke: look.stroke,
              strokeWidth: look.width,
              ...(look.dash === null ? {} : { strokeDasharray: look.dash }),
            }),
          ];
        }),
      ],
    },
  );
  if (legend !== null) svg.children.push(legend.element);
  return { svg, reading, specification: null };

  function stepsOf(points: Series['points']): Step[] {
    return points
      .flatMap((point): Step[] => {
        const x = numberOf(asked.sheet.rows[point.row]!.cells[along.at]!);
        return x === null || point.value === null ? [] : [{ ...point, x: x * across.times }];
      })
      .sort((a, b) => a.x - b.x);
  }
}

/** The steps up to an end, carried on to it where more follow. */
function cutAt(some: readonly Step[], end: number): readonly Step[] {
  const within = some.filter((step) => step.x <= end);
  const last = within.at(-1);
  return last === undefined || within.length === some.length ? within : [...within, { ...last, x: end }];
}

function noSteps(column: string): Unfit {
  return {
    code: 'not-numbers',
    seen: column,
    wanted: 'a column of numbers along the bottom, with values beside them',
    remedy: 'Name a column of times or other numbers with "x=".',
  };
}
