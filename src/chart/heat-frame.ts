import { drawingWidths, spaceForNames, textSize } from './axes.js';
import type { HeatLegend } from './heat-legend.js';
import { widestText } from './text-width.js';
import type { Frame } from './vega-drawing.js';

const rowDepth = 28;

/** Leaves room for half the first edge below the tones. */
const narrowLegendLeft = 12;

/** The size of the numbers in the fields, in pixels. */
export const fieldTextSize = 11;

/** The widest that a field grows to hold a name below it; longer names stand slanted. */
const widestField = 64;

/** The longest that a slanted name stands, in pixels; what is longer is cut. */
export const longestSlant = 150;

/** Whether the names below the fields stand slanted. */
export function slanted(names: readonly string[]): boolean {
  return widestText(names, textSize) + 6 > widestField;
}

/** The size of the fields with their numbers and names, and of the legend below them; wider than asked for where they need it. */
export function heatFrame(
  shown: readonly string[],
  names: { readonly x: readonly string[]; readonly y: readonly string[] },
  legend: HeatLegend,
  width: number,
): Frame {
  const left = spaceForNames(names.y, width);
  const slant = slanted(names.x);
  const isNarrow = width < drawingWidths.wide;
  const [size, beside] = isNarrow ? [fieldTextSize, 4] : [textSize, 8];
  const inside = Math.max(widestText(shown, size), slant ? 0 : widestText(names.x, textSize)) + beside;
  const room = Math.floor((width - left - 10) / names.x.length);
  const across = Math.max(inside, 22, Math.min(widestField, room));
  const depth = slant ? Math.min(longestSlant, widestText(names.x, textSize)) * 0.6 : 0;
  return {
    width: across * names.x.length,
    height: rowDepth * names.y.length,
    left: slant ? Math.max(left, 100) : left,
    right: Math.max(10, (isNarrow ? narrowLegendLeft - left : 0) + legend.width - across * names.x.length),
    top: isNarrow ? 22 : 6,
    bottom: 48 + depth + legend.depth,
  };
}

/** Where the legend begins, in pixels: below the fields, and in a narrow drawing as far left as it can. */
export function legendLeft({ left }: Frame, width: number): number {
  return width < drawingWidths.wide ? narrowLegendLeft : left;
}

/** Whether a frame is no wider than asked for. */
export function fits({ left, width, right }: Frame, asked: number): boolean {
  return left + width + right <= asked;
}
