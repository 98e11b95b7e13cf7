import type { Element, ElementContent } from 'hast';
import { s } from 'hastscript';
import { drawingWidths } from './axes.js';
import { chartWords } from './chart-words.js';
import type { ColourClasses } from './colour-classes.js';
import { paint } from './colours.js';
import { tickText } from './shown-scale.js';
import { textWidth, widestText } from './text-width.js';

const depth = 44;
const hatchingBelow = 22;

/** A legend of tones and its size, in pixels. */
export interface HeatLegend {
  readonly classes: ColourClasses;
  readonly label: string;
  /** Where the hatching is explained: behind the tones, below them, or nowhere. */
  readonly hatching: 'behind' | 'below' | null;
  readonly width: number;
  readonly depth: number;
}

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

/** The legend of some classes; in a narrow drawing the hatching is explained below the tones. */
export function heatLegendOf(classes: ColourClasses, label: string, hatched: boolean, width: number): HeatLegend {
  const isNarrow = width < drawingWidths.wide;
  const hatching = hatched ? (isNarrow ? 'below' : 'behind') : null;
  const tones = (classes.edges.length - (isNarrow ? 0.5 : 0)) * swatchWidth(classes);
  const hatch = 31 + textWidth(hatchWords, 12);
  return {
    classes,
    label,
    hatching,
    width: Math.max(textWidth(label, 12), hatching === 'behind' ? tones + hatch : Math.max(tones, hatched ? hatch : 0)),
    depth: depth + (hatching === 'below' ? hatchingBelow : 0),
  };
}

/** What each tone stands for, as a row of swatches with the edges between them, and the hatching. */
export function heatLegend(
  { classes, label, hatching }: HeatLegend,
  chart: string,
  left: number,
  top: number,
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
  const [after, down] = hatching === 'below' ? [0, 36] : [classes.edges.length * width, 0];
  return s('g', { transform: `translate(${left},${top})` }, [
    s('text', { x: 0, y: 8, textAnchor: 'start', fill: paint('soft') }, [label]),
    ...swatches,
    ...edges,
    ...(hatching === null
      ? []
      : [
          s('rect', {
            x: after,
            y: 16 + down,
            width: 24,
            height: 12,
            fill: `url(#${hatchId(chart)})`,
            stroke: paint('rule'),
          }),
          s('text', { x: after + 31, y: 26 + down, textAnchor: 'start', fill: paint('soft') }, [hatchWords]),
        ]),
  ]);
}
