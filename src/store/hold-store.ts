import { link, mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { type Problem, wholeFile } from '../problem/problem.js';
import { cannotWrite } from './cannot-write.js';
import { recoverStore } from './find-store.js';
import { holderText, type OwnHolder, readHolder } from './holder.js';
import { removeLeftovers } from './leftovers.js';

/** A store that nobody else writes to until it is released. */
export interface HeldStore {
  readonly folder: string;
  /** Whether the lock is still ours: somebody may have taken it away by hand. */
  readonly isHeld: () => Promise<boolean>;
  readonly release: () => Promise<void>;
}

/** The file beside a store's folder that says who writes to it. */
export function lockFile(folder: string): string {
  return `${folder}.held`;
}

const tries = 5;

/**
 * Takes a store for writing, or says who has it. A lock whose process no longer runs on this machine is taken over; what
 * a stopped write left beside the store is then cleared away, and a store that it had moved aside is put back.
 */
export async function holdStore(where: string, own: OwnHolder): Promise<HeldStore | Problem> {
  try {
    return await hold(where, resolve(where), own);
  } catch (mistake) {
    return cannotWrite(where, mistake);
  }
}

async function hold(where: string, folder: string, own: OwnHolder): Promise<HeldStore | Problem> {
  const lock = lockFile(folder);
  const text = holderText(own);
  const draft = `${lock}-${own.process}`;
  await mkdir(dirname(folder), { recursive: true });
  // Written aside and linked, so that a lock is never seen without its holder.
  try {
    await writeFile(draft, text);
    for (let attempt = 0; attempt < tries; attempt++) {
      if (await isLinked(draft, lock)) {
        const held = heldStore(folder, lock, text);
        await tidy(folder, held, own);
        return held;
      }
      const found = await readFile(lock, 'utf8').catch(() => null);
      if (found === null) continue;
      const other = readHolder(found);
      if (other === null || other.host !== own.host || own.isRunning(other.process)) return heldBy(where, lock, found);
      await removeStale(lock, `${draft}-stale`, found);
    }
    return heldBy(where, lock, (await readFile(lock, 'utf8').catch(() => null)) ?? '');
  } finally {
    await rm(draft, { force: true }).catch(() => {});
  }
}

function heldStore(folder: string, lock: string, text: string): HeldStore {
  const isHeld = async () => (await readFile(lock, 'utf8').catch(() => null)) === text;
  const release = async () => {
    // A lock that cannot be removed is stale once this process has ended.
    if (await isHeld()) await rm(lock, { force: true }).catch(() => {});
  };
  return { folder, isHeld, release };
}

async function tidy(folder: string, held: HeldStore, own: OwnHolder): Promise<void> {
  try {
    await recoverStore(folder);
    await removeLeftovers(folder);
    await removeDrafts(lockFile(folder), own);
  } catch (mistake) {
    await held.release();
    throw mistake;
  }
}

/** Removes the drafts of locks whose writers were stopped before they could. */
async function removeDrafts(lock: string, own: OwnHolder): Promise<void> {
  const prefix = `${basename(lock)}-`;
  for (const name of await readdir(dirname(lock))) {
    const writer = name.startsWith(prefix) ? Number.parseInt(name.slice(prefix.length), 10) : Number.NaN;
    if (writer > 0 && writer !== own.process && !own.isRunning(writer))
      await rm(join(dirname(lock), name), { force: true });
  }
}

async function isLinked(draft: string, lock: string): Promise<boolean> {
  try {
    await link(draft, lock);
    return true;
  } catch (mistake) {
    if (isCode(mistake, 'EEXIST')) return false;
    if (!isCode(mistake, 'EPERM') && !isCode(mistake, 'ENOTSUP') && !isCode(mistake, 'EOPNOTSUPP')) throw mistake;
  }
  // Some shares know no links; there a lock is written where none may be yet.
  try {
    await writeFile(lock, await readFile(draft), { flag: 'wx' });
    return true;
  } catch (mistake) {
    if (isCode(mistake, 'EEXIST')) return false;
    throw mistake;
  }
}

/** Takes a stale lock away; one that was renewed in the meantime is put back. */
async function removeStale(lock: string, aside: string, stale: string): Promise<void> {
  try {
    await rename(lock, aside);
  } catch (mistake) {
    if (isCode(mistake, 'ENOENT')) return;
    throw mistake;
  }
  if ((await readFile(aside, 'utf8')) !== stale) await isLinked(aside, lock);
  await rm(aside, { force: true });
}

function isCode(mistake: unknown, code: string): boolean {
  return mistake instanceof Error && 'code' in mistake && mistake.code === code;
}

function heldBy(where: string, lock: string, text: string): Problem {
  const other = readHolder(text);
  return {
    code: 'store-held',
    severity: 'stops',
    place: wholeFile(where),
    seen: other === null ? 'a lock' : `process ${other.process} on ${other.host} since ${other.since}`,
    wanted: 'a store that nobody else writes to',
    remedy: `Wait until that import has ended. If it runs no longer, remove ${lock}.`,
  };
}
