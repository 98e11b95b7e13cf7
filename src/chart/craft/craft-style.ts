import { paint } from '../colours.js';
import { drawings } from './drawings.js';
import { hatchedClasses } from './hatching.js';

/** What a group of a drawing is called whose marks are scaled with it, but not their lines. */
export function scaleClass(scale: number): string {
  return `scale-${Math.round(scale * 100)}`;
}

/** A width of lines that stays the same in a group that is scaled. */
function wide(width: number): string {
  return `stroke-width:calc(${width}px/var(--scale,1))`;
}

/** The sizes in which views are drawn, beside their own. */
const scales = [...new Set(drawings.flatMap(({ views }) => views.map(({ scale }) => scale)))].filter(
  (scale) => scale !== 1,
);

/**
 * How the marks of drawn craft look, by their classes, but for their hatching. Rules ask nothing of what stands around a
 * drawing, since a page may show it twice. A path without a class is a detail of the craft.
 */
export const craftStyle = `
${scales.map((scale) => `.drawn .${scaleClass(scale)}{--scale:${scale}}`).join('\n')}
.drawn path{stroke:${paint('ink')};${wide(1)}}
.drawn .outline{${wide(1.9)}}
.drawn .faint{stroke:${paint('soft')};${wide(0.6)}}
.drawn .behind{${wide(0.8)};stroke-dasharray:3 3}
.drawn .covers{fill:${paint('paper')}}
${[...hatchedClasses, 'none-found'].map((name) => `.drawn .${name}`).join()}{${wide(1.1)}}
.drawn .none-found{fill:${paint('paper')}}
.drawn .too-few-looks{stroke-dasharray:4 2}
.drawn .not-recorded{pointer-events:all;stroke:${paint('soft')};${wide(0.7)};stroke-dasharray:1.5 2.5}
.drawn .view{text-anchor:middle;font-size:11px;fill:${paint('soft')}}
.drawn .behind-name{fill:${paint('paper')}}
.drawn .leader path{stroke-width:.8px}
.drawn .leader .rim{stroke:${paint('paper')};stroke-width:3px;stroke-opacity:.85}
.drawn .leader circle{fill:${paint('ink')};stroke:${paint('paper')}}
.drawn .label text{fill:${paint('ink')}}
.drawn .label.left .words{text-anchor:end}
.drawn .label .ring{font-weight:600;text-anchor:middle}
.drawn .label .value{font-size:12px;fill:${paint('soft')}}
.drawn .label>circle{fill:${paint('paper')};stroke:${paint('ink')}}
.drawn .label.first>circle{stroke-width:2px}
.drawn .label.few>circle{stroke-dasharray:3 2}
.drawn .skipped circle{fill:${paint('alert')};stroke:${paint('paper')};stroke-width:1.2px}
.drawn .skipped path{stroke:${paint('paper')};stroke-width:1.8px}
.drawn .legend text{fill:${paint('ink')};font-size:12px}
.drawn .legend>text{fill:${paint('soft')}}
.drawn .legend line{stroke:${paint('hair')}}
`;
