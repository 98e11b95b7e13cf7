import * as Plot from '@observablehq/plot';
import type { Element } from 'hast';
import { type Said, settleSvg } from './settle-svg.js';
import { workshop } from './workshop.js';

/** A drawing made by Observable Plot. A warning of the library is a mistake of ours, so it throws. */
export function plotDrawing(said: Said, options: Plot.PlotOptions): Element {
  const drawn = Plot.plot({ ...options, document: workshop(), className: 'drawing', figure: false });
  const warning = [...drawn.querySelectorAll('title')].find((title) => /warnings?\. Please/.test(title.textContent));
  if (warning !== undefined) throw new Error(`the drawing "${said.name}" was made with a warning`);
  return settleSvg(drawn, said);
}
