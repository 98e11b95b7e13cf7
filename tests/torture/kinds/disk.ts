import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import disk from 'node:fs/promises';
import { syncBuiltinESMExports } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Random } from '../../../src/statistic/random.js';
import { findStore } from '../../../src/store/find-store.js';
import { holdStore } from '../../../src/store/hold-store.js';
import { readStore } from '../../../src/store/read-store.js';
import { writeStore } from '../../../src/store/write-store.js';
import { failing, disk as faults, strike } from '../../faults/failing-disk.js';
import { importSmall } from '../../intake/small-import.js';
import { plantedCrosswalk, plantedFiles } from '../planted-season.js';
import { hold, type Kind, oneOf } from '../trial.js';

const real = { ...disk };

/** Does something with every change to the disk counted, and struck where a fault is set. */
async function onFailingDisk<T>(use: () => Promise<T>): Promise<T> {
  Object.assign(disk, failing(real as typeof disk));
  syncBuiltinESMExports();
  try {
    return await use();
  } finally {
    Object.assign(disk, real);
    syncBuiltinESMExports();
  }
}

async function anImport(random: Random) {
  for (;;) {
    const files = Object.fromEntries([...plantedFiles(random, 0)].map(([name, { text }]) => [name, text]));
    const result = await importSmall(plantedCrosswalk, files);
    if (result.problems.length === 0) return result;
  }
}

const contents = (path: string) =>
  JSON.stringify(
    readdirSync(path)
      .sort()
      .map((name) => [name, readFileSync(join(path, name), 'base64')]),
  );

const struck = { process: 1, host: 'here', since: '2025-11-30T18:00:00Z', isRunning: () => false };

/** A store replaced while the disk is full for a moment, or while everything ends: the old one or the new one, whole. */
export const diskKind: Kind = {
  name: 'disk',
  counted: 'stores healed',
  patience: 60,
  pace: 8,
  run: async (random) => {
    const folder = mkdtempSync(join(tmpdir(), 'torture-disk-'));
    try {
      const path = join(folder, 'store');
      const [earlier, later] = [await anImport(random), await anImport(random)];
      await writeStore(join(folder, 'later'), later);
      await writeStore(path, earlier);
      const before = contents(path);
      const after = contents(join(folder, 'later'));
      cpSync(path, join(folder, 'counted'), { recursive: true });
      await onFailingDisk(async () => {
        strike('none', 0);
        await writeStore(join(folder, 'counted'), later);
      });
      const changes = faults.changes;
      hold(changes > 20, () => `only ${changes} changes were counted`);
      const fault = oneOf(random, ['full', 'dead'] as const);
      // Half of the strikes fall where stores change places.
      const at = random.below(2) === 0 ? 1 + random.below(changes) : changes - random.below(20);
      let said: readonly { readonly code: string }[] = [];
      await onFailingDisk(async () => {
        strike(fault, at);
        const held = await holdStore(path, struck);
        said = 'code' in held ? [held] : await writeStore(path, later, held);
        if (!('code' in held) && fault === 'full') await held.release();
        strike('none', 0);
      }).catch((mistake) => {
        if (fault === 'full') throw mistake;
      });
      const reading = await readStore(path);
      hold(!('problems' in reading), () => `struck ${fault} at ${at}: ${JSON.stringify(reading)}`);
      const now = contents(await findStore(path));
      hold(now === before || now === after, () => `struck ${fault} at ${at}: neither the old store nor the new one`);
      hold(
        fault === 'dead' || (now === after) === (said.length === 0) || before === after,
        () => `at ${at} the wrong store was named`,
      );
      const held = await holdStore(path, { ...struck, process: 2 });
      if ('code' in held) throw new Error(held.seen);
      const healed = await writeStore(path, later, held);
      await held.release();
      hold(healed.length === 0 && contents(path) === after, () => `struck ${fault} at ${at}: not healed`);
      hold(
        readdirSync(folder).every((name) => !name.startsWith('store.')),
        () => `left behind: ${readdirSync(folder)}`,
      );
      return { ended: said.length > 0 || now === before ? 'refused' : 'taken in', accounted: 1 };
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  },
};
