import type { Element } from 'hast';
import { s } from 'hastscript';
import { paint } from '../colours.js';
import type { PartFinding } from './part-findings.js';

/** How a region is filled: a class of frequency (1 to 4), or one of the standings that are no frequency. */
export type Fill = 1 | 2 | 3 | 4 | 'none found' | 'too few looks' | 'withheld' | 'not recorded';

const tones = { 1: 'ramp-1', 2: 'ramp-2', 3: 'ramp-3', 4: 'ramp-4' } as const;

function hatchName(chart: string, fill: Fill): string {
  return `${chart}-fill-${String(fill).replaceAll(' ', '-')}`;
}

/** The paint of a region. */
export function fillPaint(chart: string, fill: Fill): string {
  if (fill === 'none found') return paint('paper');
  return fill === 'not recorded' ? 'none' : `url(#${hatchName(chart, fill)})`;
}

/** The fill of a part with findings; `classOf` puts a value into its class. */
export function fillOf(part: PartFinding | null, classOf: (value: number) => number): Fill {
  if (part === null) return 'not recorded';
  if (part.standing !== 'fouled') return part.standing;
  return Math.min(4, classOf(part.value!)) as Fill;
}

/** The hatchings of a drawing: the more often a part was fouled, the denser and the deeper in tone; crosses where it is withheld. */
export function hatchings(chart: string, withheld: boolean): readonly Element[] {
  const ink = { stroke: paint('ink'), strokeWidth: 0.8 };
  const pattern = (fill: Fill, size: number, turn: number, ground: string, marks: readonly Element[]) =>
    s(
      'pattern',
      {
        id: hatchName(chart, fill),
        width: size,
        height: size,
        patternUnits: 'userSpaceOnUse',
        patternTransform: `rotate(${turn})`,
      },
      [s('rect', { width: size, height: size, fill: paint(ground) }), ...marks],
    );
  const upright = (x: number, size: number) => s('line', { x1: x, y1: 0, x2: x, y2: size, ...ink });
  const level = (y: number, size: number) => s('line', { x1: 0, y1: y, x2: size, y2: y, ...ink });
  const crossed = (from: number, to: number) => s('line', { x1: 2.5, y1: from, x2: 6.5, y2: to, ...ink });
  return [
    pattern(1, 8, 0, tones[1], [level(4, 8)]),
    pattern(2, 7, 45, tones[2], [upright(3.5, 7)]),
    pattern(3, 3.6, 45, tones[3], [upright(1.8, 3.6)]),
    pattern(4, 3.6, 45, tones[4], [upright(1.8, 3.6), level(1.8, 3.6)]),
    pattern('too few looks', 6, 0, 'paper', [
      s('circle', { cx: 1.5, cy: 1.5, r: 0.8, fill: paint('soft') }),
      s('circle', { cx: 4.5, cy: 4.5, r: 0.8, fill: paint('soft') }),
    ]),
    ...(withheld ? [pattern('withheld', 9, 45, 'paper', [crossed(2.5, 6.5), crossed(6.5, 2.5)])] : []),
  ];
}
