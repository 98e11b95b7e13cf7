import { readFile, stat } from 'node:fs/promises';
import { resolve } from 'node:path';
import { lockFile } from './hold-store.js';
import { type OwnHolder, readHolder } from './holder.js';
import { leftoversOf, replacedFolder } from './leftovers.js';

/**
 * What a write that was stopped left of a store: the `earlier` one, where the write had not come to its end; the `new` one,
 * where only the clearing away was left to do. Null where nothing was stopped, or a write still runs.
 */
export async function unfinishedWrite(where: string, own: OwnHolder): Promise<'earlier' | 'new' | null> {
  const folder = resolve(where);
  const leftovers = await leftoversOf(folder);
  if (leftovers.length === 0) return null;
  const lock = await readFile(lockFile(folder), 'utf8').catch(() => null);
  const holder = lock === null ? null : readHolder(lock);
  if (holder !== null && (holder.host !== own.host || own.isRunning(holder.process))) return null;
  const stands = (await stat(folder).catch(() => null)) !== null;
  return stands && leftovers.includes(replacedFolder(folder)) ? 'new' : 'earlier';
}
