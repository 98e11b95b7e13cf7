import { stat } from 'node:fs/promises';
import { join } from 'node:path';
import { type Problem, wholeFile } from '../problem/problem.js';
import { locate } from './source/container.js';

/** What tells whether a file was written to since, by its path on disk: which file it is, its size, and its last change. */
export type FileStamps = ReadonlyMap<string, string>;

async function stampOf(path: string): Promise<string> {
  const found = await stat(path, { bigint: true }).catch(() => null);
  return found === null ? 'gone' : [found.ino, found.size, found.mtimeNs, found.ctimeNs].join(' ');
}

/** The stamps of the files that hold these exports, as they are now. */
export async function fileStamps(from: string, files: readonly string[]): Promise<FileStamps> {
  const stamps = new Map<string, string>();
  for (const path of files) {
    const { file } = await locate(from, path);
    if (!stamps.has(file)) stamps.set(file, await stampOf(join(from, file)));
  }
  return stamps;
}

/** A problem for each file that is no longer as it was. */
export async function changedFiles(from: string, stamps: FileStamps): Promise<readonly Problem[]> {
  const problems: Problem[] = [];
  for (const [file, stamp] of stamps) {
    if ((await stampOf(join(from, file))) === stamp) continue;
    problems.push({
      code: 'file-changed',
      severity: 'stops',
      place: wholeFile(file),
      seen: 'it was written to while it was read',
      wanted: 'a file that stays as it is',
      remedy: 'Import again once nothing writes to the file.',
    });
  }
  return problems;
}
