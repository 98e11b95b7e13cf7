import { createHash } from 'node:crypto';
import { open } from 'node:fs/promises';
import { join } from 'node:path';

/** Writes a file piece by piece; gives the SHA-256 of what was written. */
export async function writePieces(path: string, pieces: Iterable<string | Uint8Array>): Promise<string> {
  const hash = createHash('sha256');
  const handle = await open(path, 'w');
  try {
    for (const piece of pieces) {
      // The piece is fingerprinted while another thread writes it.
      const written = handle.writeFile(piece);
      hash.update(piece);
      await written;
    }
  } finally {
    await handle.close();
  }
  return hash.digest('hex');
}

async function sync(path: string, flag: 'r' | 'r+'): Promise<void> {
  const handle = await open(path, flag);
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** Returns once the files of a folder, and their names, have reached the disk itself. */
export async function syncFiles(folder: string, names: readonly string[]): Promise<void> {
  await Promise.all(names.map((name) => sync(join(folder, name), 'r+')));
  await syncNames(folder);
}

/** Returns once the names in a folder have reached the disk; a system that knows no such thing for folders is trusted. */
export async function syncNames(folder: string): Promise<void> {
  try {
    await sync(folder, 'r');
  } catch (mistake) {
    const code = mistake instanceof Error && 'code' in mistake ? mistake.code : '';
    if (code !== 'EISDIR' && code !== 'EPERM' && code !== 'EINVAL' && code !== 'EACCES') throw mistake;
  }
}
