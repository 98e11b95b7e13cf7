import { placed } from './path.js';

/** How a line of a drawing is drawn: an outline, a detail, a faint detail, or what lies behind a surface. */
export type Weight = 'outline' | 'detail' | 'faint' | 'behind';

/** A line of the craft itself, filled with paper where it covers what lies behind it. */
export interface Line {
  readonly weight: Weight;
  readonly d: string;
  readonly covers: boolean;
}

/** A part of the catalogue as a closed shape. The one place where its label points has `at`; repeats have null. */
export interface Region {
  readonly component: string;
  readonly d: string;
  readonly at: readonly [x: number, y: number] | null;
}

/**
 * A craft seen from one direction, in user units from its upper left corner, in painting order. Paths hold only absolute
 * M, L, C, Q and Z, so that they can be mirrored and measured without a browser.
 */
export interface View {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly marks: readonly (Line | Region)[];
}

/** An outline that covers what lies behind it. */
export function body(d: string): Line {
  return { weight: 'outline', d, covers: true };
}

/** A detail that covers what lies behind it. */
export function fitting(d: string): Line {
  return { weight: 'detail', d, covers: true };
}

/** A line that covers nothing. */
export function line(d: string, weight: Weight = 'detail'): Line {
  return { weight, d, covers: false };
}

/** A part with the place to which its label points. */
export function part(component: string, d: string, x: number, y: number): Region {
  return { component, d, at: [x, y] };
}

/** The same part once more, without a label of its own. */
export function again(component: string, d: string): Region {
  return { component, d, at: null };
}

/** Whether a mark is a part. */
export function isRegion(mark: Line | Region): mark is Region {
  return 'component' in mark;
}

/** Marks scaled, then moved. */
export function movedMarks(marks: View['marks'], left: number, top: number, scale = 1): View['marks'] {
  return marks.map((mark) => {
    const d = placed(mark.d, left, top, scale);
    if (!isRegion(mark)) return { ...mark, d };
    return { ...mark, d, at: mark.at === null ? null : [mark.at[0] * scale + left, mark.at[1] * scale + top] };
  });
}
