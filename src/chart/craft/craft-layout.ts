import type { CraftDrawing } from './craft-drawing.js';
import { heightFor, type Placed, placeLabels } from './label-places.js';
import { isRegion } from './view.js';

/** The space for labels on each side of a drawing. */
export const margin = 200;

/** From the middle of one label to the next. */
export const labelsApart = 36;

/** Where a drawing's labels stand, and how high the drawing must be for them. */
export interface CraftLayout {
  readonly width: number;
  readonly height: number;
  readonly labels: readonly Placed[];
}

/** Labels for some parts of a drawing; each points into the view that shows the part best. */
export function layoutCraft(drawing: CraftDrawing, labelled: ReadonlySet<string>): CraftLayout {
  const points = drawing.views.flatMap(({ view, left, top, scale }) => {
    const across = view.width * scale;
    // A small view lies wholly on one side of the drawing, so that its leaders need not cross the view beside it.
    const middle = across < drawing.width * 0.7 ? left + across / 2 : null;
    return view.marks.filter(isRegion).flatMap(({ component, at }) => {
      if (at === null || !labelled.has(component)) return [];
      const x = left + at[0] * scale;
      return [{ name: component, x, y: top + at[1] * scale, lean: middle ?? x }];
    });
  });
  const first = points.filter(({ name }, at) => points.findIndex((other) => other.name === name) === at);
  const height = Math.max(drawing.height, heightFor(first.length, labelsApart));
  const frame = { width: drawing.width, height, apart: labelsApart };
  return { width: drawing.width + 2 * margin, height, labels: placeLabels(first, frame) };
}
