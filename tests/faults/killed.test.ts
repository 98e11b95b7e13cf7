import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { findStore } from '../../src/store/find-store.js';
import { readStore } from '../../src/store/read-store.js';
import { rampbook, root } from '../command/run.js';

const folder = mkdtempSync(join(tmpdir(), 'killed-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const crosswalk = `
crosswalk: killed
files:
  - files: money.csv
    table: spending
    columns: { no: { field: entry }, note: { field: note }, dollars: { field: amount } }
    constants: { fiscal_year: 2025, category: supplies }
`;

/** Enough rows for an import to last a while, one bad one in five. */
const money = (rows: number, note: string) =>
  [
    'no,note,dollars',
    ...Array.from({ length: rows }, (_, row) => `${row},${note} ${row},${row % 5 ? row : 'x'}`),
    '',
  ].join('\n');

const store = join(folder, 'store');
const words = ['import', join(folder, 'c.yaml'), '--from', folder, '--store', store, '--quiet'];
const start = (): ChildProcess =>
  spawn(process.execPath, [join(root, 'bin/rampbook'), ...words], { cwd: root, stdio: ['ignore', 'ignore', 'pipe'] });

const contents = async () => {
  const at = await findStore(store);
  return Object.fromEntries(readdirSync(at).map((name) => [name, readFileSync(join(at, name), 'latin1')]));
};

let lasted = 0;
beforeAll(() => {
  writeFileSync(join(folder, 'c.yaml'), crosswalk);
  writeFileSync(join(folder, 'money.csv'), money(60_000, 'first'));
  const began = Date.now();
  expect(rampbook(words).exitCode).toBe(0);
  lasted = Date.now() - began;
});

test('killed at moments spread over an import, the store is the one from before or the new one, whole', async () => {
  const moments = 8;
  let before = await contents();
  for (let moment = 0; moment < moments; moment++) {
    writeFileSync(join(folder, 'money.csv'), money(60_000, `round ${moment}`));
    const child = start();
    // Most of the moments lie in the second half, where the store is written.
    await wait(lasted * (0.3 + (0.75 * moment) / moments));
    child.kill('SIGKILL');
    await new Promise((done) =>
      child.exitCode === null && child.signalCode === null ? child.on('exit', done) : done(0),
    );
    const reading = await readStore(store);
    expect('problems' in reading ? reading.problems : []).toEqual([]);
    const now = await contents();
    const isBefore = JSON.stringify(now) === JSON.stringify(before);
    // What is not the earlier store holds the new note in every row.
    if (!isBefore) expect('records' in reading && notesOf(reading.records.spending)).toBe(`round ${moment}`);
    before = now;
  }
  // Whatever the last one left, the next import goes through and clears it away.
  expect(rampbook(words)).toMatchObject({ exitCode: 0 });
  expect(readdirSync(folder).sort()).toEqual(['c.yaml', 'money.csv', 'store']);
});

function notesOf({ columns, rowCount }: { columns: ReadonlyMap<string, unknown>; rowCount: number }): string {
  const { dictionary } = columns.get('note') as { dictionary: readonly string[] };
  const notes = new Set(dictionary.slice(1).map((note) => note.replace(/ \d+$/, '')));
  expect([rowCount, notes.size]).toEqual([48_000, 1]);
  return [...notes][0]!;
}

test('of two imports at once the second says who holds the store and stops, and the first ends well', async () => {
  writeFileSync(join(folder, 'money.csv'), money(60_000, 'twice'));
  const first = start();
  while (!readdirSync(folder).some((name) => name.startsWith('store.held-'))) await wait(20);
  // Held still, so that it cannot end before the second has looked.
  first.kill('SIGSTOP');
  const second = rampbook(words);
  first.kill('SIGCONT');
  expect(second).toMatchObject({ exitCode: 1, err: expect.stringContaining(`process ${first.pid}`) });
  expect(second.err).toContain('store-held');
  const exit = await new Promise((done) => first.on('exit', done));
  expect(exit).toBe(0);
});
