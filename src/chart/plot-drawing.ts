import * as Plot from '@observablehq/plot';
import type { Element } from 'hast';
import { elementsBelow, type Said, type SettledElement, settleSvg } from './settle-svg.js';
import { workshop } from './workshop.js';

/** A drawing made by Observable Plot. A warning of the library is a mistake of ours, so it throws. */
export function plotDrawing(said: Said, options: Plot.PlotOptions): Element {
  const drawn = Plot.plot({ ...options, document: workshop(), className: 'drawing', figure: false });
  const warns = [...elementsBelow(drawn)].some((one) => one.nodeName === 'title' && isWarning(one));
  if (warns) throw new Error(`the drawing "${said.name}" was made with a warning`);
  return settleSvg(drawn, said);
}

function isWarning({ childNodes }: SettledElement): boolean {
  return /warnings?\. Please/.test([...childNodes].map(({ nodeValue }) => nodeValue).join(''));
}
