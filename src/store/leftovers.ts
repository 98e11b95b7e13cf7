import { readdir, rm } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { storeFiles } from './store-description.js';

/** Where a store that is being replaced stands until the new one is in its place. */
export function replacedFolder(folder: string): string {
  return `${folder}.writing-replaced`;
}

/** The beginning of the name of every folder in which a store is being written. */
export function writingPrefix(folder: string): string {
  return `${folder}.writing-`;
}

/** What stopped writes left beside a store: the paths of unfinished or replaced stores. */
export async function leftoversOf(folder: string): Promise<readonly string[]> {
  const prefix = basename(writingPrefix(folder));
  const names = await readdir(dirname(folder)).catch(() => []);
  return names.filter((name) => name.startsWith(prefix)).map((name) => join(dirname(folder), name));
}

/** Removes a folder that may look like a store, its description first: half of it is never taken for a whole one. */
export async function removeStore(folder: string): Promise<void> {
  await rm(join(folder, storeFiles.description), { force: true });
  await rm(folder, { recursive: true, force: true });
}

/** Removes what stopped writes left; only whoever holds the store may do so, since what is there may be in use. */
export async function removeLeftovers(folder: string): Promise<void> {
  for (const path of await leftoversOf(folder)) await removeStore(path);
}
