import type { Element, ElementContent } from 'hast';
import { s } from 'hastscript';
import { chartWords } from './chart-words.js';
import type { ColourClasses } from './colour-classes.js';
import { paint } from './colours.js';
import { tickText } from './shown-scale.js';
import { textWidth, widestText } from './text-width.js';

/** How deep the legend of tones stands, in pixels. */
export const legendDepth = 44;

/** The address of a chart's hatching. */
export function hatchId(chart: string): string {
  return `${chart}-hatch`;
}

/** Slanted lines for a field without a value. */
export function hatchPattern(chart: string): Element {
  return s(
    'pattern',
    { id: hatchId(chart), width: 6, height: 6, patternUnits: 'userSpaceOnUse', patternTransform: 'rotate(45)' },
    [
      s('rect', { width: 6, height: 6, fill: paint('paper') }),
      s('line', { y2: 6, stroke: paint('rule'), strokeWidth: 2 }),
    ],
  );
}

const hatchWords = chartWords.heatHatched;

function swatchWidth(classes: ColourClasses): number {
  return Math.max(36, widestText(classes.edges.map(tickText), 12) + 10);
}

/** How wide the legend stands, in pixels. */
export function legendWidth(classes: ColourClasses, label: string, hatched: boolean): number {
  const after = classes.edges.length * swatchWidth(classes);
  return Math.max(textWidth(label, 12), hatched ? after + 31 + textWidth(hatchWords, 12) : after);
}

/** What each tone stands for, as a row of swatches with the edges between them, and the hatching. */
export function heatLegend(
  classes: ColourClasses,
  chart: string,
  label: string,
  left: number,
  top: number,
  hatched: boolean,
): ElementContent {
  const width = swatchWidth(classes);
  const swatches = classes.edges.slice(1).map((_, at) =>
    s('rect', {
      x: at * width,
      y: 16,
      width,
      height: 12,
      fill: paint(`ramp-${at + 1}`),
      stroke: paint('rule'),
      strokeWidth: 0.5,
    }),
  );
  const edges = classes.edges.map((edge, at) =>
    s('text', { x: at * width, y: 42, textAnchor: 'middle', fill: paint('soft') }, [tickText(edge)]),
  );
  const after = classes.edges.length * width;
  return s('g', { transform: `translate(${left},${top})` }, [
    s('text', { x: 0, y: 8, textAnchor: 'start', fill: paint('soft') }, [label]),
    ...swatches,
    ...edges,
    ...(hatched
      ? [
          s('rect', { x: after, y: 16, width: 24, height: 12, fill: `url(#${hatchId(chart)})`, stroke: paint('rule') }),
          s('text', { x: after + 31, y: 26, textAnchor: 'start', fill: paint('soft') }, [hatchWords]),
        ]
      : []),
  ]);
}
