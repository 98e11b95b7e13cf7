import { spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { findStore } from '../../../src/store/find-store.js';
import { readStore } from '../../../src/store/read-store.js';
import { rampbook, root } from '../../command/run.js';
import { notesCrosswalk } from '../../intake/small-import.js';
import { hold, type Kind } from '../trial.js';

const rows = 20_000;
const money = (note: string) =>
  `no,note,dollars\n${Array.from({ length: rows }, (_, row) => `${row},${note} ${row},${row % 5 ? row : 'x'}\n`).join('')}`;

async function storeIn(store: string): Promise<string> {
  const at = await findStore(store);
  return JSON.stringify(
    readdirSync(at)
      .sort()
      .map((name) => [name, readFileSync(join(at, name), 'base64')]),
  );
}

/** An import killed by the system at any moment: the old store or the new one, whole, and the next import goes through. */
export const killsKind: Kind = {
  name: 'kills',
  counted: 'rows',
  patience: 120,
  pace: 0.15,
  run: async (random) => {
    const folder = mkdtempSync(join(tmpdir(), 'torture-kills-'));
    try {
      const store = join(folder, 'store');
      writeFileSync(join(folder, 'c.yaml'), notesCrosswalk);
      writeFileSync(join(folder, 'notes.csv'), money('first'));
      const words = ['import', join(folder, 'c.yaml'), '--from', folder, '--store', store, '--quiet'];
      const began = process.hrtime.bigint();
      hold(rampbook(words).exitCode === 0, () => 'the first import failed');
      const lasted = Number(process.hrtime.bigint() - began) / 1e6;
      const before = await storeIn(store);
      writeFileSync(join(folder, 'notes.csv'), money('later'));
      const child = spawn(process.execPath, [join(root, 'bin/rampbook'), ...words], { cwd: root, stdio: 'ignore' });
      const ended = new Promise((done) => child.on('exit', done));
      await wait(lasted * random.uniform() * 1.1);
      child.kill('SIGKILL');
      await ended;
      const reading = await readStore(store);
      if ('problems' in reading) throw new Error(JSON.stringify(reading.problems));
      const isBefore = (await storeIn(store)) === before;
      hold(isBefore || reading.records.spending.rowCount === rows * 0.8, () => 'a mixture of two stores');
      hold(rampbook(words).exitCode === 0, () => 'the next import failed');
      const left = readdirSync(folder).sort().join(' ');
      hold(left === 'c.yaml notes.csv store', () => `left behind: ${left}`);
      return { ended: isBefore ? 'refused' : 'taken in', accounted: rows };
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  },
};
