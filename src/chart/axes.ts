import * as Plot from '@observablehq/plot';
import { paint } from './colours.js';
import { tickText } from './shown-scale.js';
import { textWidth, widestText } from './text-width.js';

/** How wide a drawing is, in pixels, before the page scales it: for a page, and for a telephone held upright. */
export const drawingWidths = { wide: 680, narrow: 328 } as const;

/** The size of a drawing's text, in pixels. */
export const textSize = 12;

/** The widest that names beside rows may grow before they wrap. */
function widestNames(width: number): number {
  return width < drawingWidths.wide ? 112 : 190;
}

/** The space that names of rows need on the left, in pixels. */
export function spaceForNames(names: readonly string[], width: number): number {
  return Math.min(widestNames(width), widestText(names, textSize)) + 14;
}

/** The height of a row, in pixels: more where a name must wrap. */
export function rowHeight(names: readonly string[], width: number): number {
  const lines = Math.max(1, ...names.map((name) => Math.ceil(textWidth(name, textSize) / widestNames(width))));
  return lines === 1 ? 25 : 34 + (Math.min(lines, 3) - 2) * 13;
}

/** Names of rows along the left side. */
export function nameAxis(names: readonly string[], width: number): Plot.Markish {
  return Plot.axisY(names, {
    label: null,
    tickSize: 0,
    tickPadding: 8,
    lineHeight: 1.1,
    lineWidth: (widestNames(width) * 0.82) / textSize,
    fontSize: textSize,
    color: paint('ink'),
  });
}

/** A measured axis along the bottom, with faint lines upward and its words and unit below. */
export function measureAxisX(label: string, width: number): Plot.Markish[] {
  const ticks = width < drawingWidths.wide ? 4 : 6;
  return [
    Plot.gridX({ stroke: paint('hair'), strokeOpacity: 1, ticks }),
    Plot.axisX({
      label,
      labelAnchor: 'center',
      labelArrow: 'none',
      labelOffset: 38,
      tickFormat: tickText,
      tickSize: 0,
      ticks,
      fontSize: textSize,
      color: paint('soft'),
    }),
  ];
}

/** A measured axis up the left side, with faint lines across and its words and unit above. */
export function measureAxisY(label: string): Plot.Markish[] {
  return [
    Plot.gridY({ stroke: paint('hair'), strokeOpacity: 1, ticks: 5 }),
    Plot.axisY({
      label,
      labelAnchor: 'top',
      labelArrow: 'none',
      labelOffset: 46,
      tickFormat: tickText,
      tickSize: 0,
      ticks: 5,
      fontSize: textSize,
      color: paint('soft'),
    }),
  ];
}

/** The top of a measured scale that starts at zero: a little more than the largest number drawn, and never zero. */
export function topOf(numbers: readonly (number | null)[]): number {
  const largest = numbers.reduce<number>((top, number) => Math.max(top, number ?? 0), 0);
  return largest === 0 ? 1 : largest;
}

/** The foot of a measured scale: zero, or the smallest number drawn where that is below. */
export function footOf(numbers: readonly (number | null)[]): number {
  return numbers.reduce<number>((foot, number) => Math.min(foot, number ?? 0), 0);
}
