import { readdir, readFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { type Holder, type OwnHolder, readHolder } from './holder.js';

/** A lock that lies beside a store. */
export interface Lock {
  readonly path: string;
  readonly holder: Holder;
  readonly isOwn: boolean;
  /** Whether its process ran on this machine and no longer does. */
  readonly isStale: boolean;
}

/** The file beside a store's folder that says that somebody writes to it; its name is of that holder alone. */
export function lockFile(folder: string, { process, host }: Holder): string {
  return `${folder}.held-${process}-${encodeURIComponent(host)}`;
}

/** The host in a lock's name; as it stands there where nobody encoded it so. */
function hostFrom(name: string): string {
  try {
    return decodeURIComponent(name);
  } catch {
    return name;
  }
}

/** The locks that lie beside a store, those half written included. */
export async function locksOf(folder: string, own: OwnHolder): Promise<readonly Lock[]> {
  const start = `${basename(folder)}.held-`;
  const locks: Lock[] = [];
  for (const name of await readdir(dirname(folder)).catch(() => [])) {
    const [, process, host] =
      /^(\d+)-(.+?)(?:\.new)?$/u.exec(name.startsWith(start) ? name.slice(start.length) : '') ?? [];
    if (process === undefined || host === undefined) continue;
    const path = join(dirname(folder), name);
    const text = await readFile(path, 'utf8').catch(() => null);
    if (text === null) continue;
    const named = { process: Number(process), host: hostFrom(host), since: 'an unknown time' };
    const holder = readHolder(text) ?? named;
    const isOwn = path === lockFile(folder, own);
    const isOfOwn = holder.host === own.host && holder.process === own.process;
    const isStale = !isOwn && holder.host === own.host && (isOfOwn || !own.isRunning(holder.process));
    locks.push({ path, holder, isOwn, isStale });
  }
  return locks;
}
