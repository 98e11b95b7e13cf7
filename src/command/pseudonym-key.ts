import { randomBytes } from 'node:crypto';
import { existsSync, readFileSync, realpathSync } from 'node:fs';
import { dirname, join, resolve, sep } from 'node:path';
import { type Problem, wholeFile } from '../problem/problem.js';
import { askSecret } from './ask-secret.js';

const fewestBytes = 16;

/** The key under which pseudonyms are made; one that is not kept was made by chance and is thrown away. */
export interface PseudonymKey {
  readonly bytes: Uint8Array;
  readonly kept: boolean;
}

/** The places of an import beside which no key may lie: whoever is given them would be given the key. */
export interface KeyNeighbours {
  readonly crosswalks: readonly string[];
  readonly from: string;
  readonly store: string;
}

/**
 * The key for pseudonyms: the bytes of a file, for `-` what is typed without being shown, or without either a key made by
 * chance. A file that cannot be read, lies within the project, the exports or the store, or is too short to keep a secret,
 * is a problem; its bytes are never shown.
 */
export async function readKey(
  file: string | undefined,
  beside: KeyNeighbours,
): Promise<PseudonymKey | { readonly problem: Problem }> {
  if (file === undefined) return { bytes: randomBytes(32), kept: false };
  const bad = (code: string, seen: string, remedy: string): { problem: Problem } => {
    const place = wholeFile(file === '-' ? 'the key' : file);
    return {
      problem: { code, severity: 'stops', place, seen, wanted: `a key of at least ${fewestBytes} bytes`, remedy },
    };
  };
  let bytes: Uint8Array;
  try {
    bytes = file === '-' ? await askSecret('Key for pseudonyms (not shown): ') : readFileSync(file);
  } catch {
    return bad('no-such-file', 'no readable file', 'Check the path given to --key, or give --key - to type the key.');
  }
  if (bytes.length < fewestBytes) {
    const make = 'Make one with: head -c 32 /dev/urandom > KEYFILE, and keep it out of the project.';
    return bad('short-key', `${bytes.length} bytes`, make);
  }
  const around = file === '-' ? null : folderAround(file, beside);
  if (around !== null) {
    const remedy = 'Move the key out of it: whoever is given that folder could undo the pseudonyms.';
    return bad('key-in-project', `a key within ${around}`, remedy);
  }
  return { bytes, kept: true };
}

/** The first of the neighbouring folders that holds the key; null for none. */
function folderAround(file: string, { crosswalks, from, store }: KeyNeighbours): string | null {
  const key = realPath(file);
  const projects = crosswalks.flatMap((path) => [dirname(path), ...versionedFolder(path)]);
  return [from, store, ...projects].find((folder) => key.startsWith(withEnd(realPath(folder)))) ?? null;
}

/** The folder around a file that is kept under version control, where there is one. */
function versionedFolder(path: string): readonly string[] {
  for (let folder = dirname(realPath(path)); ; folder = dirname(folder)) {
    if (existsSync(join(folder, '.git'))) return [folder];
    if (folder === dirname(folder)) return [];
  }
}

/** A path with every link in it followed, as far as it exists. */
function realPath(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    return resolve(path);
  }
}

function withEnd(folder: string): string {
  return folder.endsWith(sep) ? folder : folder + sep;
}
