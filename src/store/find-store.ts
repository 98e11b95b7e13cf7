import { readFile, rename, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { type Problem, wholeFile } from '../problem/problem.js';
import { tables } from '../record/tables.js';
import { replacedFolder } from './leftovers.js';
import {
  descriptionFingerprint,
  type StoreDescription,
  storeFiles,
  storeMark,
  storeVersion,
} from './store-description.js';

function refusal(code: string, folder: string, seen: string, wanted: string, remedy: string): Problem {
  return { code, severity: 'stops', place: wholeFile(folder), seen, wanted, remedy };
}

const importFirst = 'Make one with rampbook import, or look at the path.';

const isThere = async (path: string) => (await stat(path).catch(() => null)) !== null;

/**
 * The folder in which a store stands: the one named, or where it was moved aside by a write that was stopped, or is just
 * now, between moving it and putting the new one in its place.
 */
export async function findStore(folder: string): Promise<string> {
  if (await isThere(folder)) return folder;
  const replaced = replacedFolder(folder);
  return (await isThere(join(replaced, storeFiles.description))) ? replaced : folder;
}

/** Brings back a store that a stopped write had moved aside; only whoever holds the store may do so. */
export async function recoverStore(folder: string): Promise<void> {
  const found = await findStore(folder);
  if (found !== folder) await rename(found, folder);
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
  if (description.version !== storeVersion) return otherVersion(path, description.version);
  const { fingerprint } = description;
  return fingerprint === undefined || fingerprint === descriptionFingerprint(description)
    ? description
    : refusal('damaged-store', path, 'another text', 'the description as it was stored', 'Import the exports again.');
}

function otherVersion(path: string, version: number): Problem {
  const remedy =
    version < storeVersion
      ? 'An earlier rampbook wrote it. Import the exports again: the store is replaced whole, and nothing is lost.'
      : 'A later rampbook wrote it. Use that one, or import the exports again with this one.';
  return refusal('other-version', path, `version ${version}`, `version ${storeVersion}`, remedy);
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
