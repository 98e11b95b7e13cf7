import { mkdir, stat } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';

async function isFolder(path: string): Promise<boolean> {
  return (await stat(path).catch(() => null))?.isDirectory() ?? false;
}

/**
 * Makes a folder and those above it that are missing, from the top down. Node's own way of doing so never ends on some
 * file systems that refuse new folders, such as /proc; this one throws what the system says.
 */
export async function makeFolder(folder: string): Promise<void> {
  const path = resolve(folder);
  if (await isFolder(path)) return;
  if (dirname(path) !== path) await makeFolder(dirname(path));
  try {
    await mkdir(path);
  } catch (mistake) {
    // Another process may have made it in between.
    if (!(await isFolder(path))) throw mistake;
  }
}
