import * as Plot from '@observablehq/plot';
import { textSize } from './axes.js';
import { paint } from './colours.js';
import { shortName } from './key-text.js';
import { widestText } from './text-width.js';

/** The places of an ordered key along the bottom: the axis, and the space that its names need below. */
export interface PlaceAxis {
  readonly marks: readonly Plot.Markish[];
  readonly marginBottom: number;
}

/** Names along the bottom, upright where they fit, slanted where they do not, with the key's words below them. */
export function placeAxis(names: readonly string[], label: string, width: number): PlaceAxis {
  const short = names.map(shortName);
  const widest = widestText(short, textSize);
  const slanted = widest + 6 > width / names.length;
  const depth = slanted ? Math.min(widest, 150) * 0.58 + 10 : textSize;
  const axis = Plot.axisX(names, {
    label: label.charAt(0).toUpperCase() + label.slice(1),
    labelAnchor: 'center',
    labelArrow: 'none',
    labelOffset: depth + 28,
    tickFormat: shortName,
    tickRotate: slanted ? -35 : 0,
    tickSize: 0,
    tickPadding: 7,
    fontSize: textSize,
    color: paint('soft'),
  });
  return { marks: [axis], marginBottom: depth + 38 };
}
