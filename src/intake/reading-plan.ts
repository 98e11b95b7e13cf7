import type { Crosswalk } from './crosswalk.js';
import type { FileStamps } from './file-stamps.js';
import type { Task } from './find-exports.js';
import type { MendedFiles } from './mending/take-corrections.js';
import type { PastFiles, ReadUnder } from './recall/known-files.js';
import type { Withdrawn } from './withdrawing/withdrawn.js';

/** What is read, and what is known beforehand; known and mended files by the place of their task. */
export interface ReadingPlan {
  readonly crosswalks: readonly Crosswalk[];
  readonly tasks: readonly Task[];
  readonly under: ReadUnder;
  readonly known: PastFiles;
  readonly mended: MendedFiles;
  readonly withdrawn: Withdrawn;
  readonly stamps: FileStamps;
}

/** The plan without the tasks at those places. */
export function without(plan: ReadingPlan, gone: ReadonlySet<number>): ReadingPlan {
  const left = plan.tasks.flatMap((_, place) => (gone.has(place) ? [] : [place]));
  const moved = <V>(byPlace: ReadonlyMap<number, V>): ReadonlyMap<number, V> =>
    new Map(left.flatMap((place, now): [number, V][] => (byPlace.has(place) ? [[now, byPlace.get(place)!]] : [])));
  return {
    ...plan,
    tasks: left.map((place) => plan.tasks[place]!),
    known: moved(plan.known),
    mended: moved(plan.mended),
  };
}

/** The plan with the files at those places to be read again. */
export function notKnown(plan: ReadingPlan, places: readonly number[]): ReadingPlan {
  return { ...plan, known: new Map([...plan.known].filter(([place]) => !places.includes(place))) };
}
