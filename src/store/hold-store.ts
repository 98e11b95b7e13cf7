import { readFile, rename, rm, writeFile } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { type Problem, wholeFile } from '../problem/problem.js';
import { cannotWrite } from './cannot-write.js';
import { recoverStore } from './find-store.js';
import { type Holder, holderText, type OwnHolder } from './holder.js';
import { removeLeftovers } from './leftovers.js';
import { type Lock, lockFile, locksOf } from './locks.js';
import { makeFolder } from './make-folder.js';

/** A store that nobody else writes to until it is released. */
export interface HeldStore {
  readonly folder: string;
  /** Whether the lock is still ours: somebody may have taken it away by hand. */
  readonly isHeld: () => Promise<boolean>;
  readonly release: () => Promise<void>;
}

const tries = 10;
const pause = 20;

/**
 * Takes a store for writing, or says who has it. Everybody lays down a lock under a name of their own and then looks for
 * others: of two who come at once at least one sees the other, so that never both go on. Who sees another gives way, but for
 * the one with the lowest number, who waits a moment for the rest to do so. Locks whose process no longer runs on this
 * machine do not count, and are cleared away with what a stopped write left; a store that it had moved aside is put back.
 */
export async function holdStore(where: string, own: OwnHolder): Promise<HeldStore | Problem> {
  const folder = resolve(where);
  const lock = lockFile(folder, own);
  const text = holderText(own);
  const release = async () => {
    // A lock that cannot be removed is stale once this process has ended.
    if (await isHeld()) await rm(lock, { force: true }).catch(() => {});
  };
  const isHeld = async () => (await readFile(lock, 'utf8').catch(() => null)) === text;
  try {
    await makeFolder(dirname(folder));
    // Put in place whole, so that a lock is never seen without its holder.
    await writeFile(`${lock}.new`, text);
    await rename(`${lock}.new`, lock);
    const other = await otherHolder(folder, own);
    if (other !== null) {
      await release();
      return heldBy(where, other);
    }
    await clearUp(folder, own);
    return { folder, isHeld, release };
  } catch (mistake) {
    await release();
    await rm(`${lock}.new`, { force: true }).catch(() => {});
    return cannotWrite(where, mistake);
  }
}

/** Somebody else who holds the store or is about to, once whoever should give way has had the time; null for nobody. */
async function otherHolder(folder: string, own: OwnHolder): Promise<Lock | null> {
  for (let attempt = 1; ; attempt++) {
    const others = (await locksOf(folder, own)).filter(({ isOwn, isStale }) => !isOwn && !isStale);
    const [first] = others;
    if (first === undefined) return null;
    const isLowest = others.every(({ holder }) => comesBefore(own, holder));
    if (!isLowest || attempt === tries) return first;
    await wait(pause);
  }
}

function comesBefore(one: Holder, other: Holder): boolean {
  return one.host === other.host ? one.process < other.process : one.host < other.host;
}

async function clearUp(folder: string, own: OwnHolder): Promise<void> {
  for (const { path, isStale } of await locksOf(folder, own)) if (isStale) await rm(path, { force: true });
  await recoverStore(folder);
  await removeLeftovers(folder);
}

function heldBy(where: string, { holder, path }: Lock): Problem {
  return {
    code: 'store-held',
    severity: 'stops',
    place: wholeFile(where),
    seen: `process ${holder.process} on ${holder.host} since ${holder.since}`,
    wanted: 'a store that nobody else writes to',
    remedy: `Wait until that import has ended. If it runs no longer, remove ${path}.`,
  };
}
