import type { Element } from 'hast';
import { s } from 'hastscript';
import { paint } from '../colours.js';
import type { PartFinding } from './part-findings.js';

/** How a region is filled: a class of frequency (1 to 4), or one of the standings that are no frequency. */
export type Fill = 1 | 2 | 3 | 4 | 'found on few' | 'none found' | 'too few looks' | 'withheld' | 'not recorded';

/** The class by which the style of drawn craft fills a region. */
export function fillClass(fill: Fill): string {
  return typeof fill === 'number' ? `tone-${fill}` : fill.replaceAll(' ', '-');
}

/** The fill of a part with findings; `classOf` puts a value into its class. */
export function fillOf(part: PartFinding | null, classOf: (value: number) => number): Fill {
  if (part === null) return 'not recorded';
  if (part.standing !== 'fouled') return part.standing;
  if (part.few) return 'found on few';
  return Math.min(4, classOf(part.value!)) as Fill;
}

/** A hatching: a square that repeats, turned by some degrees, on a ground; through its middle may run lines from edge to edge. */
export interface Hatching {
  readonly size: number;
  readonly turned: 0 | 45;
  readonly ground: string;
  readonly lines: readonly ('level' | 'upright')[];
  /** Short strokes within the square, from a point by some way; one that goes nowhere is a dot. */
  readonly strokes: readonly (readonly [x: number, y: number, across: number, down: number])[];
  readonly ink: 'ink' | 'soft';
  readonly width: number;
}

const inInk = { strokes: [], ink: 'ink', width: 0.8 } as const;

/** By their classes: the more often a part was fouled, the denser and the deeper in tone; crosses where it is withheld. */
export const hatchings: ReadonlyMap<string, Hatching> = new Map<string, Hatching>([
  [fillClass(1), { ...inInk, size: 8, turned: 0, ground: 'ramp-1', lines: ['level'] }],
  [fillClass(2), { ...inInk, size: 7, turned: 45, ground: 'ramp-2', lines: ['upright'] }],
  [fillClass(3), { ...inInk, size: 3.6, turned: 45, ground: 'ramp-3', lines: ['upright'] }],
  [fillClass(4), { ...inInk, size: 3.6, turned: 45, ground: 'ramp-4', lines: ['upright', 'level'] }],
  [
    fillClass('too few looks'),
    { size: 6, turned: 0, ground: 'paper', lines: [], strokes: dots(1.5, 4.5), ink: 'soft', width: 1.6 },
  ],
  [
    fillClass('found on few'),
    { ...inInk, size: 7, turned: 0, ground: 'ramp-1', lines: [], strokes: [[1.5, 5.5, 4, -4]] },
  ],
  [fillClass('withheld'), { ...inInk, size: 9, turned: 45, ground: 'paper', lines: [], strokes: cross(2.5, 4) }],
]);

/** The classes of the fills that are hatched. */
export const hatchedClasses: readonly string[] = [...hatchings.keys()];

function dots(...places: readonly number[]): Hatching['strokes'] {
  return places.map((place) => [place, place, 0, 0]);
}

function cross(from: number, by: number): Hatching['strokes'] {
  return [
    [from, from, by, by],
    [from, from + by, by, -by],
  ];
}

/** The style by which drawn craft take their hatchings from a page's sheet of them. */
export const patternStyle = `
:root{${named('hatch')}}
.handout{${named('white-hatch')}}
.hatchings{position:absolute}
${hatchedClasses.map((name) => `.drawn .${name}{fill:var(--${name})}`).join('\n')}
`;

function named(word: string): string {
  return hatchedClasses.map((name) => `--${name}:url(#${word}-${name})`).join(';');
}

/** The hatchings that all drawn craft of a page share: those of the page, and those of its handouts, which look like paper. */
export function hatchSheet(): Element {
  return s('svg', { className: ['hatchings'], width: 0, height: 0, ariaHidden: 'true' }, [
    s('defs', patterns('hatch')),
    s('defs', { className: ['on-white'] }, patterns('white-hatch')),
  ]);
}

function patterns(word: string): Element[] {
  return [...hatchings].map(([name, { size, turned, ground, lines, strokes, ink, width }]) => {
    const whole = lines.map((line) => (line === 'level' ? `M0 ${size / 2}H${size}` : `M${size / 2} 0V${size}`));
    const short = strokes.map(([x, y, across, down]) => `M${x} ${y}l${across} ${down}`);
    return s(
      'pattern',
      {
        id: `${word}-${name}`,
        width: size,
        height: size,
        patternUnits: 'userSpaceOnUse',
        patternTransform: turned === 0 ? undefined : `rotate(${turned})`,
      },
      [
        s('rect', { width: size, height: size, fill: paint(ground) }),
        s('path', {
          d: [...whole, ...short].join(''),
          stroke: paint(ink),
          strokeWidth: width,
          strokeLinecap: 'round',
        }),
      ],
    );
  });
}
