import { existsSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Problem, wholeFile } from '../problem/problem.js';
import { cannotWrite } from '../store/cannot-write.js';
import { makeFolder } from '../store/make-folder.js';

/** Makes the folder that pages are to be written to; the problem where that cannot be. */
export async function openPageFolder(folder: string): Promise<Problem | null> {
  const found = statSync(folder, { throwIfNoEntry: false });
  if (found !== undefined && !found.isDirectory()) {
    const remedy = 'Give --to a folder, or a name that is not taken.';
    return {
      code: 'is-a-file',
      severity: 'stops',
      place: wholeFile(folder),
      seen: 'a file',
      wanted: 'a folder for the pages',
      remedy,
    };
  }
  if (existsSync(join(folder, 'store.json'))) {
    return {
      code: 'is-a-store',
      severity: 'stops',
      place: wholeFile(folder),
      seen: 'a store of records',
      wanted: 'a folder for the pages',
      remedy:
        'Give --to another folder: a store is replaced as a whole by the next import, and pages in it would be lost.',
    };
  }
  try {
    await makeFolder(folder);
    return null;
  } catch (mistake) {
    return cannotWrite(folder, mistake);
  }
}

/** Writes a page beside its name, then renames it, so that it is there whole or not at all; the problem where it is not. */
export function writePage(
  folder: string,
  name: string,
  bytes: string | Uint8Array,
): { readonly path: string; readonly problem: Problem | null } {
  const path = join(folder, name);
  const beside = `${path}.writing-${process.pid}`;
  try {
    writeFileSync(beside, bytes);
    renameSync(beside, path);
    return { path, problem: null };
  } catch (mistake) {
    return { path, problem: cannotWrite(path, mistake) };
  } finally {
    rmSync(beside, { force: true });
  }
}
