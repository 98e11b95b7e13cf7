import { carriedMark } from './carried-mark.js';
import { type CraftDrawing, drawnComponents, driveNotRecorded, stand } from './craft-drawing.js';
import { isRegion, type Line, type Region, type View } from './view.js';

const above = 6;
const nameDepth = 16;
const farthestApart = 90;

/**
 * A craft as it stands for all of its type whose drive is not recorded: with its own drive, and at the foot with what the
 * others have. A part is labelled once; what no craft of the type is built to carry is drawn, but no part.
 */
export function anyDrive(build: CraftDrawing, others: readonly View[]): CraftDrawing {
  if (others.length === 0) return { ...build, drive: driveNotRecorded };
  const labelled = new Set(drawnComponents(build));
  const asPart = (of: Line | Region): Line | Region => {
    const mark = carriedMark(of, build.watercraftType);
    if (!isRegion(mark)) return mark;
    const { component, d, at } = mark;
    const isNew = at !== null && !labelled.has(component);
    if (isNew) labelled.add(component);
    return { component, d, at: isNew ? at : null };
  };
  const room = (build.width - others.reduce((sum, view) => sum + view.width, 0)) / others.length;
  const apart = Math.min(room, farthestApart);
  let left = apart / 2;
  const standing = others.map((view) => {
    const placed = stand({ ...view, marks: view.marks.map(asPart) }, left, build.height + above);
    left += view.width + apart;
    return placed;
  });
  return {
    ...build,
    drive: driveNotRecorded,
    height: build.height + above + Math.max(...others.map(({ height }) => height)) + nameDepth,
    views: [...build.views, ...standing],
    anyDrive: null,
  };
}
