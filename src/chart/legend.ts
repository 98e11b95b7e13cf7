import type { ElementContent } from 'hast';
import { s } from 'hastscript';
import { paint } from './colours.js';
import type { Look } from './series.js';
import { textWidth } from './text-width.js';

/** How high a row of a legend stands, in pixels. */
const rowHeight = 24;

const sample = 34;

/**
 * The legend of a chart's lines, laid out from `left` along the top of a drawing so wide, in as many rows as it takes, and how
 * high it stands: a piece of each line, with its mark if lines are `marked`.
 */
export function lineLegend(
  looks: ReadonlyMap<string, Look>,
  left: number,
  width: number,
  marked = true,
): { readonly element: ElementContent; readonly height: number } {
  let [x, row] = [left, 0];
  const entries = [...looks].map(([name, look]) => {
    const long = sample + 7 + textWidth(name, 12);
    if (x > left && x + long > width) [x, row] = [left, row + 1];
    const entry = s('g', { transform: `translate(${x},${32 + row * rowHeight})` }, [
      s('line', { x2: sample, stroke: look.stroke, strokeWidth: look.width, strokeDasharray: look.dash ?? undefined }),
      ...(marked
        ? [
            s('path', {
              d: marks[look.symbol],
              transform: `translate(${sample / 2},0)`,
              fill: look.symbol === 'cross' ? 'none' : look.stroke,
              stroke: look.stroke,
              strokeWidth: 1.5,
            }),
          ]
        : []),
      s('text', { x: sample + 7, dy: '0.32em', textAnchor: 'start', fill: paint('ink') }, [name]),
    ]);
    x += long + 22;
    return entry;
  });
  return { element: s('g', entries), height: (row + 1) * rowHeight };
}

/** The marks about a point, as paths. */
const marks: Readonly<Record<Look['symbol'], string>> = {
  circle: 'M3.4,0A3.4,3.4,0,1,1,-3.4,0A3.4,3.4,0,1,1,3.4,0Z',
  square: 'M-3,-3H3V3H-3Z',
  triangle: 'M0,-4.2L3.7,2.3H-3.7Z',
  diamond: 'M0,-4.6L3,0L0,4.6L-3,0Z',
  cross: 'M-3,-3L3,3M-3,3L3,-3',
};

/** A mark as Plot draws it: the same path that the legend shows. */
export function markOf(look: Look): { draw(context: { moveTo(x: number, y: number): void }): void } {
  return { draw: (context) => tracePath(context as PathContext, marks[look.symbol]) };
}

interface PathContext {
  moveTo(x: number, y: number): void;
  lineTo(x: number, y: number): void;
  arc(x: number, y: number, radius: number, from: number, to: number): void;
  closePath(): void;
}

function tracePath(context: PathContext, path: string): void {
  if (path.includes('A')) {
    context.moveTo(3.4, 0);
    context.arc(0, 0, 3.4, 0, 2 * Math.PI);
    context.closePath();
    return;
  }
  let x = 0;
  let y = 0;
  for (const [, verb, words = ''] of path.matchAll(/([MLHVZ])([^MLHVZ]*)/g)) {
    const [first = 0, second = 0] = words.split(',').map(Number);
    if (verb === 'Z') context.closePath();
    if (verb === 'H') x = first;
    if (verb === 'V') y = first;
    if (verb === 'M' || verb === 'L') [x, y] = [first, second];
    if (verb === 'M') context.moveTo(x, y);
    else if (verb !== 'Z') context.lineTo(x, y);
  }
}
