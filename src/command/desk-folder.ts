import { isUtf8 } from 'node:buffer';
import {
  lstatSync,
  readdirSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join, sep } from 'node:path';

/** The names of the notebooks in a folder, in the order of their letters. */
export function notebooksIn(folder: string): readonly string[] {
  return readdirSync(folder)
    .filter((name) => notebookPath(folder, name) !== null)
    .sort();
}

/**
 * The true path of a notebook in a folder by its file's name; null where there is none. A name that leads out of the folder,
 * by dots, by a separator or by a link, is none; nor is a file that is not UTF-8, since saving it would spoil its letters.
 */
export function notebookPath(folder: string, name: string): string | null {
  if (!/^[^/\\\0]+\.md$/i.test(name) || name.startsWith('.')) return null;
  try {
    const inside = realpathSync(folder);
    const path = realpathSync(join(inside, name));
    return path.startsWith(inside + sep) && statSync(path).isFile() && isUtf8(readFileSync(path)) ? path : null;
  } catch {
    return null;
  }
}

/** The text of a notebook; null where it is not there any more, became a link since, or is not UTF-8 any more. */
export function readNotebook(path: string): string | null {
  try {
    const bytes = lstatSync(path).isFile() ? readFileSync(path) : null;
    return bytes !== null && isUtf8(bytes) ? new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes) : null;
  } catch {
    return null;
  }
}

/**
 * Makes a new notebook in a folder. Null where it was made, or why it was not, in words: nothing that is there is ever written
 * over, nor a file whose name differs only in large and small letters, which is the same file on some disks.
 */
export function makeNotebook(folder: string, name: string, text: string): string | null {
  const taken = 'there is a file of that name already';
  try {
    const inside = realpathSync(folder);
    if (readdirSync(inside).some((there) => there.toLowerCase() === name.toLowerCase())) return taken;
    writeFileSync(join(inside, name), text, { flag: 'wx' });
    return null;
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    return code === 'EEXIST' ? taken : `the folder cannot be written to (${code ?? String(error)})`;
  }
}

/** Writes a notebook beside itself and puts it in place whole, with the rights it had; the path must lead to no link. */
export function writeNotebook(path: string, text: string): void {
  const mode = lstatSync(path, { throwIfNoEntry: false })?.mode;
  if (realpathSync(dirname(path)) !== dirname(path)) throw new Error(`${path} leads somewhere else by now`);
  const beside = `${path}.writing-${process.pid}`;
  try {
    writeFileSync(beside, text, { flag: 'wx', ...(mode === undefined ? {} : { mode: mode & 0o777 }) });
    renameSync(beside, path);
  } finally {
    rmSync(beside, { force: true });
  }
}
