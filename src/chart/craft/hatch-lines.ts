import type { Element, ElementContent } from 'hast';
import { s } from 'hastscript';
import { paint } from '../colours.js';
import { type Hatching, hatchings } from './hatching.js';

const regions = [...hatchings].map(
  ([name, { ground, ink, width }]) => `
.drawn .${name}{fill:${paint(ground)}}
.drawn .${name}-lines{stroke:${paint(ink)};stroke-width:${width}px}`,
);

/**
 * The style of drawings that are hatched by lines: each region is toned, and its lines lie upon it. Dashes are as long as with
 * their round ends on a screen, but end square, since a browser prints each of them as an outline.
 */
export const lineStyle = `${regions.join('')}
.drawn .not-recorded{stroke-linecap:butt;stroke-dasharray:2.2 1.8}
.drawn .too-few-looks{stroke-linecap:butt;stroke-dasharray:5.1 .9}
.drawn .behind{stroke-linecap:butt;stroke-dasharray:3.8 2.2}
`;

/**
 * A drawing of a craft whose regions are hatched by lines within them, for paper: browsers print patterns as images, which are
 * large and blurred. Lines stand where the pattern's would.
 */
export function hatchedWithLines(drawing: Element): Element {
  let clips = 0;
  const hatched = (element: ElementContent): ElementContent[] => {
    if (element.type !== 'element') return [element];
    const name = Array.isArray(element.properties.className) ? String(element.properties.className[0]) : '';
    const hatching = element.tagName === 'path' ? hatchings.get(name) : undefined;
    if (hatching === undefined) return [{ ...element, children: element.children.flatMap(hatched) }];
    const d = String(element.properties.d);
    const id = `${drawing.properties.id}-region-${++clips}`;
    return [
      element,
      s('clipPath', { id }, [s('path', { d })]),
      s('g', { clipPath: `url(#${id})` }, [
        s('path', {
          d: linesOver(d, hatching),
          className: [`${name}-lines`],
          transform: hatching.turned === 0 ? undefined : `rotate(${hatching.turned})`,
        }),
      ]),
    ];
  };
  return { ...drawing, children: drawing.children.flatMap(hatched) };
}

/** The lines of a hatching over all of a path, before they are turned. */
function linesOver(d: string, { size, turned, lines, strokes }: Hatching): string {
  const numbers = [...d.matchAll(/-?[\d.]+/g)].map(Number);
  const turn = (turned * Math.PI) / 180;
  const [right, down] = [Math.cos(turn), Math.sin(turn)];
  const xs: number[] = [];
  const ys: number[] = [];
  for (let at = 0; at < numbers.length; at += 2) {
    const [x, y] = [numbers[at]!, numbers[at + 1]!];
    xs.push(x * right + y * down);
    ys.push(y * right - x * down);
  }
  const first = (of: readonly number[]): number => Math.floor(Math.min(...of) / size);
  const last = (of: readonly number[]): number => Math.floor(Math.max(...of) / size);
  const [left, top, end, foot] = [first(xs), first(ys), last(xs), last(ys)];
  const place = (square: number, within: number): number => Number((square * size + within).toFixed(2));
  const drawn: string[] = [];
  for (let column = left; column <= end && lines.includes('upright'); column++) {
    drawn.push(`M${place(column, size / 2)} ${place(top, 0)}V${place(foot + 1, 0)}`);
  }
  for (let row = top; row <= foot && lines.includes('level'); row++) {
    drawn.push(`M${place(left, 0)} ${place(row, size / 2)}H${place(end + 1, 0)}`);
  }
  for (const [x, y, across, fall] of strokes) {
    for (let row = top; row <= foot; row++) {
      for (let column = left; column <= end; column++) {
        drawn.push(`M${place(column, x)} ${place(row, y)}l${across} ${fall}`);
      }
    }
  }
  return drawn.join('');
}
