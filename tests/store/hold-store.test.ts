import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { holdStore } from '../../src/store/hold-store.js';
import type { OwnHolder } from '../../src/store/holder.js';

const folder = mkdtempSync(join(tmpdir(), 'hold-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A process of this machine; those named run, no other does. */
const holder = (process: number, running: readonly number[], host = 'here'): OwnHolder => ({
  process,
  host,
  since: '2025-11-30T18:00:00.000Z',
  isRunning: (id) => running.includes(id),
});

async function held(path: string, own: OwnHolder) {
  const store = await holdStore(path, own);
  if ('code' in store) throw new Error(store.seen);
  return store;
}

test('of two that want a store the second is told who has it, since when, and what to do', async () => {
  const path = join(folder, 'two');
  const first = await held(path, holder(11, [11, 12]));
  expect(await holdStore(path, holder(12, [11, 12]))).toMatchObject({
    code: 'store-held',
    seen: 'process 11 on here since 2025-11-30T18:00:00.000Z',
    remedy: expect.stringContaining(`${path}.held-11-here`),
  });
  await first.release();
  await (await held(path, holder(12, [11, 12]))).release();
  expect(readdirSync(folder).filter((name) => name.startsWith('two'))).toEqual([]);
});

test('of many at once exactly one gets the store, whatever was left before', async () => {
  const path = join(folder, 'many');
  writeFileSync(`${path}.held-1-here`, JSON.stringify({ process: 1, host: 'here', since: 'long ago' }));
  const own = Array.from({ length: 12 }, (_, index) => index + 100);
  const stores = await Promise.all(own.map((process) => holdStore(path, holder(process, own))));
  expect(stores.filter((store) => 'release' in store)).toHaveLength(1);
});

test('a lock whose process is gone is taken over, and what it left is cleared away', async () => {
  const path = join(folder, 'stale');
  await held(path, holder(21, [21]));
  mkdirSync(`${path}.writing-abc`);
  const next = await held(path, holder(22, [22]));
  expect(existsSync(`${path}.writing-abc`)).toBe(false);
  expect(readdirSync(folder).filter((name) => name.startsWith('stale'))).toEqual(['stale.held-22-here']);
  await next.release();
});

test('a lock whose name nobody encoded is a lock like any other', async () => {
  const path = join(folder, 'named');
  writeFileSync(`${path}.held-33-100%`, '');
  expect(await holdStore(path, holder(34, [34]))).toMatchObject({
    code: 'store-held',
    seen: expect.stringContaining('33 on 100%'),
  });
});

test('what is being written by whoever holds the store is not cleared away', async () => {
  const path = join(folder, 'busy');
  await held(path, holder(31, [31]));
  mkdirSync(`${path}.writing-abc`);
  expect(await holdStore(path, holder(32, [31, 32]))).toMatchObject({ code: 'store-held' });
  expect(existsSync(`${path}.writing-abc`)).toBe(true);
});

test('a lock of another machine is not taken over, nor one whose text is lost while its process runs', async () => {
  const path = join(folder, 'other');
  const first = await held(path, holder(41, [], 'elsewhere'));
  expect(await holdStore(path, holder(42, []))).toMatchObject({ seen: expect.stringContaining('on elsewhere') });
  await first.release();
  writeFileSync(`${path}.held-43-here`, '');
  expect(await holdStore(path, holder(42, [43]))).toMatchObject({ code: 'store-held' });
  expect(await holdStore(path, holder(42, []))).toMatchObject({ folder: path });
});

test('a lock taken away by hand is noticed, and is not removed from whoever has it then', async () => {
  const path = join(folder, 'lost');
  const first = await held(path, holder(51, [51, 52]));
  rmSync(`${path}.held-51-here`);
  const second = await held(path, holder(52, [51, 52]));
  expect(await first.isHeld()).toBe(false);
  await first.release();
  expect(await second.isHeld()).toBe(true);
});

test('a place that cannot be written to is a problem', async () => {
  writeFileSync(join(folder, 'leaf'), '');
  expect(await holdStore(join(folder, 'leaf', 'store'), holder(61, []))).toMatchObject({ code: 'cannot-write' });
});
