import type * as Disk from 'node:fs/promises';

/** What becomes of changes to the disk: all done; one refused for want of space; or nothing done from one of them on. */
export type Fault = 'none' | 'full' | 'dead';

/** The fault that is set, and how many changes were asked for so far. */
export const disk = { fault: 'none' as Fault, at: 0, changes: 0, changesMade: [] as string[] };

/** Sets a fault that strikes at a change, counted from 1; a dead process leaves that change half done. */
export function strike(fault: Fault, at: number): void {
  Object.assign(disk, { fault, at, changes: 0, changesMade: [] });
}

function noSpace(name: string): Error {
  const mistake = new Error(`ENOSPC: no space left on device, ${name}`);
  return Object.assign(mistake, { code: 'ENOSPC', syscall: name });
}

/** Counts a change; says whether it is struck. */
function isStruck(name: string): boolean {
  disk.changes++;
  disk.changesMade.push(name);
  return disk.fault === 'full' ? disk.changes === disk.at : disk.fault === 'dead' && disk.changes >= disk.at;
}

/** The disk of Node, each of its changes counted and struck where a fault is set. */
export function failing(real: typeof Disk): typeof Disk {
  const guarded =
    <A extends readonly unknown[], R>(name: string, change: (...given: A) => Promise<R>) =>
    async (...given: A): Promise<R> => {
      if (isStruck(name)) throw noSpace(name);
      return change(...given);
    };
  const open = async (...given: Parameters<typeof Disk.open>) => {
    const isForWriting = given[1] !== 'r' && given[1] !== undefined;
    if (isForWriting && isStruck(`open ${given[1]}`)) throw noSpace('open');
    const handle = await real.open(...given);
    return new Proxy(handle, {
      get(target, name) {
        const held: unknown = Reflect.get(target, name, target);
        if (typeof held !== 'function') return held;
        const call = held.bind(target) as (...words: unknown[]) => Promise<unknown>;
        if (name !== 'writeFile' && name !== 'sync') return call;
        return async (...words: unknown[]) => {
          if (!isStruck(name)) return call(...words);
          const [piece] = words;
          // What a full disk or a killed process leaves of a write: its first half.
          if (name === 'writeFile')
            await call(Buffer.from(piece as Uint8Array).subarray(0, (piece as string).length / 2));
          throw noSpace(name);
        };
      },
    });
  };
  return {
    ...real,
    open,
    writeFile: guarded('writeFile', real.writeFile) as typeof Disk.writeFile,
    mkdir: guarded('mkdir', real.mkdir) as typeof Disk.mkdir,
    mkdtemp: guarded('mkdtemp', real.mkdtemp) as typeof Disk.mkdtemp,
    chmod: guarded('chmod', real.chmod),
    rename: guarded('rename', real.rename),
    rm: guarded('rm', real.rm),
  };
}
