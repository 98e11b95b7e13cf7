import { mkdirSync, statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';

/**
 * Makes a folder and those above it that are missing, from the top down. Node's own way of doing so never ends on some
 * file systems that refuse new folders, such as /proc; this one throws what the system says.
 */
export function makeFolder(folder: string): void {
  const path = resolve(folder);
  if (statSync(path, { throwIfNoEntry: false })?.isDirectory()) return;
  if (dirname(path) !== path) makeFolder(dirname(path));
  try {
    mkdirSync(path);
  } catch (mistake) {
    // Another process may have made it in between.
    if (!statSync(path, { throwIfNoEntry: false })?.isDirectory()) throw mistake;
  }
}
