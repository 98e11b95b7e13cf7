import { stat } from 'node:fs/promises';
import { findStore } from './find-store.js';

const tries = 5;

/**
 * What `read` gives of a store that stayed the same while it was read: when another store was put in its place meanwhile,
 * it is read again, so that no part comes from the old one and another from the new.
 */
export async function readSteadily<T>(folder: string, read: (at: string) => Promise<T>): Promise<T> {
  const marked = async () => {
    const at = await findStore(folder);
    const found = await stat(at, { bigint: true }).catch(() => null);
    return { at, mark: found === null ? '' : `${at} ${found.dev} ${found.ino}` };
  };
  let before = await marked();
  for (let attempt = 1; ; attempt++) {
    const reading = await read(before.at);
    const after = await marked();
    if (after.mark === before.mark || attempt === tries) return reading;
    before = after;
  }
}
