import type { Region, View } from './view.js';
import { isRegion } from './view.js';

/** A view and where it stands on the drawing. */
export interface PlacedView {
  readonly view: View;
  readonly left: number;
  readonly top: number;
  readonly scale: number;
}

/** A craft as it is drawn for a class: what it is called, which recorded craft it stands for, and its views. */
export interface CraftDrawing {
  /** As a notebook names it: `open-motorboat`. */
  readonly name: string;
  readonly title: string;
  /** The recorded type and drive it stands for; both null for the trailer, which belongs to all. */
  readonly watercraftType: string | null;
  readonly drive: string | null;
  readonly width: number;
  readonly height: number;
  readonly views: readonly PlacedView[];
}

/** A view at its place. */
export function stand(view: View, left: number, top: number, scale = 1): PlacedView {
  return { view, left, top, scale };
}

/** Every region of a drawing, in painting order. */
export function regionsOf(drawing: CraftDrawing): readonly Region[] {
  return drawing.views.flatMap(({ view }) => view.marks.filter(isRegion));
}

/** The parts a drawing shows, each once, in painting order. */
export function drawnComponents(drawing: CraftDrawing): readonly string[] {
  return [...new Set(regionsOf(drawing).map(({ component }) => component))];
}
