import * as Plot from '@observablehq/plot';
import type { Element } from 'hast';
import { JSDOM } from 'jsdom';
import { type Said, settleSvg } from './settle-svg.js';

/** The document in which drawings are made; nothing in it is shown or run. */
let workshop: Document | null = null;

/** A drawing made by Observable Plot. A warning of the library is a mistake of ours, so it throws. */
export function plotDrawing(said: Said, options: Plot.PlotOptions): Element {
  workshop ??= new JSDOM('').window.document;
  const drawn = Plot.plot({ ...options, document: workshop, className: 'drawing', figure: false });
  const warning = [...drawn.querySelectorAll('title')].find((title) => /warnings?\. Please/.test(title.textContent));
  if (warning !== undefined) throw new Error(`the drawing "${said.name}" was made with a warning`);
  return settleSvg(drawn, said);
}
