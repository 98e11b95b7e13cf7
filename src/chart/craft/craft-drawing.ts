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
  /** The recorded type and drive it stands for; null where any is meant, as for the trailer, and for craft whose parts hang on no drive. */
  readonly watercraftType: string | null;
  readonly drive: string | null;
  readonly width: number;
  readonly height: number;
  readonly views: readonly PlacedView[];
  /** How it is drawn where its drive is not recorded; null where drives say nothing of its parts, and in such a drawing itself. */
  readonly anyDrive: CraftDrawing | null;
}

/** The drive of a drawing that stands for all of its type whose drive is not recorded. */
export const driveNotRecorded = 'not recorded';

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
