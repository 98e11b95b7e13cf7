import type { Task } from '../find-exports.js';
import type { FileReading } from '../read-file.js';
import { sameFiles } from '../recall/known-files.js';
import type { Withdrawn, WithdrawnFile } from './withdrawn.js';

/** What of an import says which seasons are withdrawn. */
export interface WithdrawRequest {
  readonly from: string;
  readonly withdraw?: readonly number[];
  readonly callBack?: readonly number[];
}

/**
 * The tasks without the files that are known to belong to withdrawn seasons, and the seasons that are withdrawn now: those
 * of before and those asked for, less those called back.
 */
export async function leaveWithdrawn(
  { from, withdraw = [], callBack = [] }: WithdrawRequest,
  tasks: readonly Task[],
  before: Withdrawn,
): Promise<{ readonly tasks: readonly Task[]; readonly withdrawn: Withdrawn }> {
  const asked = new Set([...before.seasons, ...withdraw]);
  for (const season of callBack) asked.delete(season);
  const seasons = [...asked].sort((a, b) => a - b);
  const still = before.files.filter((file) => file.seasons.every((season) => asked.has(season)));
  const same = await sameFiles(from, tasks, still);
  const known = new Map([...same].filter(([place, { rules }]) => rules === tasks[place]!.crosswalk.fingerprint));
  const left = tasks.filter((_, place) => !known.has(place));
  return { tasks: left, withdrawn: { seasons, files: inOrder([...known.values()]) } };
}

/** What a store keeps of a file that is left out. */
export function withdrawnFile(
  reading: FileReading,
  seasons: readonly number[],
  { crosswalk, ruleNumber }: Task,
): WithdrawnFile {
  const { file, fingerprint, read } = reading;
  const { name, fingerprint: rules } = crosswalk;
  return { file, fingerprint, crosswalk: name, rules, rule: ruleNumber, seasons, read };
}

/** Files left out in the order of their names, whenever they were. */
export function inOrder(files: readonly WithdrawnFile[]): readonly WithdrawnFile[] {
  const nameOf = ({ file, crosswalk, rule }: WithdrawnFile) => `${file}\n${crosswalk}\n${rule}`;
  return [...files].sort((a, b) => (nameOf(a) < nameOf(b) ? -1 : 1));
}
