import { readFile, rename, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { type Problem, wholeFile } from '../problem/problem.js';
import { tables } from '../record/tables.js';
import { type StoreDescription, storeFiles, storeMark, storeVersion } from './store-description.js';

/** Where a store that is being replaced stands until the new one is in its place. */
export function replacedFolder(folder: string): string {
  return `${folder}.writing-replaced`;
}

function refusal(code: string, folder: string, seen: string, wanted: string, remedy: string): Problem {
  return { code, severity: 'stops', place: wholeFile(folder), seen, wanted, remedy };
}

const importFirst = 'Make one with rampbook import, or look at the path.';

/** Brings back a store that was moved aside by a write which was stopped before the new one was in place. */
export async function recoverStore(folder: string): Promise<void> {
  const isThere = async (path: string) => (await stat(path).catch(() => null)) !== null;
  if ((await isThere(folder)) || !(await isThere(join(replacedFolder(folder), storeFiles.description)))) return;
  await rename(replacedFolder(folder), folder);
}

/** What the store in a folder says of itself, or why the folder is none that can be read. */
export async function describeStore(folder: string): Promise<StoreDescription | Problem> {
  const found = await stat(folder).catch(() => null);
  if (found === null) return refusal('no-such-store', folder, 'no folder', 'a store of records', importFirst);
  if (!found.isDirectory()) return refusal('not-a-store', folder, 'a file', 'the folder of a store', importFirst);
  const path = join(folder, storeFiles.description);
  const text = await readFile(path, 'utf8').catch(() => null);
  if (text === null) {
    return refusal('not-a-store', folder, `no ${storeFiles.description}`, 'a store of records', importFirst);
  }
  const description = readDescription(text);
  if (description === null) {
    return refusal('not-a-store', path, 'another text', 'the description of a store', importFirst);
  }
  if (description.version !== storeVersion) {
    const seen = `version ${description.version}`;
    return refusal('other-version', path, seen, `version ${storeVersion}`, 'Import the exports again.');
  }
  return description;
}

function readDescription(text: string): StoreDescription | null {
  try {
    const value: unknown = JSON.parse(text);
    if (typeof value !== 'object' || value === null) return null;
    const { store, version, sum, tables: sizes } = value as Partial<StoreDescription>;
    if (store !== storeMark || typeof version !== 'number') return null;
    const isWhole = sum !== undefined && sizes !== undefined && tables.every(({ name }) => name in sizes);
    return isWhole || version !== storeVersion ? (value as StoreDescription) : null;
  } catch {
    return null;
  }
}
