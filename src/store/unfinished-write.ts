import { stat } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { OwnHolder } from './holder.js';
import { leftoversOf, replacedFolder } from './leftovers.js';
import { locksOf } from './locks.js';

/**
 * What a write that was stopped left of a store: the `earlier` one, where the write had not come to its end; the `new` one,
 * where only the clearing away was left to do. Null where nothing was stopped, or a write still runs.
 */
export async function unfinishedWrite(where: string, own: OwnHolder): Promise<'earlier' | 'new' | null> {
  const folder = resolve(where);
  const leftovers = await leftoversOf(folder);
  if (leftovers.length === 0) return null;
  if ((await locksOf(folder, own)).some(({ isStale, isOwn }) => !isStale && !isOwn)) return null;
  const stands = (await stat(folder).catch(() => null)) !== null;
  return stands && leftovers.includes(replacedFolder(folder)) ? 'new' : 'earlier';
}
