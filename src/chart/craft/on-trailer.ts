import { anyDrive } from './any-drive.js';
import { type CraftDrawing, stand } from './craft-drawing.js';
import { trailerSide } from './trailer-side.js';
import type { View } from './view.js';

/** How wide a craft is drawn, without its labels. */
export const craftWidth = 500;

const belowSide = 22;
const trailerScale = 0.58;

/**
 * A craft with its side view above, its stern and its inside below, and its trailer at the foot; `otherDrives` are what others
 * of its type have in place of its own drive, null where no part hangs on a drive.
 */
export function onTrailer(
  named: Pick<CraftDrawing, 'name' | 'title' | 'watercraftType' | 'drive'>,
  [side, stern, plan]: readonly [side: View, stern: View, plan: View],
  otherDrives: readonly View[] | null = null,
): CraftDrawing {
  const below = side.height + belowSide;
  const trailerTop = below + plan.height + 22;
  const right = craftWidth - plan.width;
  const build: CraftDrawing = {
    ...named,
    width: craftWidth,
    height: Math.max(below + stern.height, trailerTop + trailerSide.height * trailerScale) + 16,
    views: [
      stand(side, 0, 0),
      stand(stern, 0, below),
      stand(plan, right, below),
      stand(trailerSide, right, trailerTop, trailerScale),
    ],
    anyDrive: null,
  };
  return otherDrives === null ? build : { ...build, anyDrive: anyDrive(build, otherDrives) };
}
