import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import type * as Disk from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import type { ImportResult } from '../../src/intake/import-exports.js';
import { findStore } from '../../src/store/find-store.js';
import { holdStore } from '../../src/store/hold-store.js';
import { readStore } from '../../src/store/read-store.js';
import { unfinishedWrite } from '../../src/store/unfinished-write.js';
import { writeStore } from '../../src/store/write-store.js';
import { importSmall, stationCrosswalk, stationFiles } from '../intake/small-import.js';
import { disk, type Fault, strike } from './failing-disk.js';

vi.mock('node:fs/promises', async (original) => {
  const { failing } = await import('./failing-disk.js');
  const real = failing(await original<typeof Disk>());
  return { ...real, default: real };
});

const folder = mkdtempSync(join(tmpdir(), 'faults-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

// The process that is struck runs no longer by the time the next one looks.
const struck = { process: 1, host: 'here', since: '2025-11-30T18:00:00Z', isRunning: () => false };
const next = { ...struck, process: 2 };

let earlier: ImportResult;
let later: ImportResult;
beforeAll(async () => {
  const inspections = ['1,L1,2025-05-01 09:00,2025-05-01 09:10,P,,C,', '2,L1,2025-05-01 10:00,,M,,C,=1'];
  earlier = await importSmall(stationCrosswalk, stationFiles({ inspections: inspections.slice(0, 1) }));
  later = await importSmall(stationCrosswalk, stationFiles({ inspections, checks: ['1,bilge,none,clean,'] }));
  expect(await writeStore(join(folder, 'earlier'), earlier)).toEqual([]);
  expect(await writeStore(join(folder, 'later'), later)).toEqual([]);
});

const contents = (path: string) =>
  Object.fromEntries(readdirSync(path).map((name) => [name, readFileSync(join(path, name), 'base64')]));

/** Writes the later import over the earlier store as a command does, under a fault. */
async function replaceUnder(fault: Fault, at: number, path: string) {
  cpSync(join(folder, 'earlier'), path, { recursive: true });
  strike(fault, at);
  try {
    const held = await holdStore(path, struck);
    if ('code' in held) return [held];
    const problems = await writeStore(path, later, held);
    if (fault !== 'dead') await held.release();
    return problems;
  } catch (mistake) {
    // Only a process that is gone may fail to say what happened.
    if (fault !== 'dead') throw mistake;
    return [];
  } finally {
    strike('none', 0);
  }
}

/** Which of the two stores stands in a folder; fails where it is neither, or a part of each. */
async function standing(path: string): Promise<'earlier' | 'later'> {
  const reading = await readStore(path);
  if ('problems' in reading) throw new Error(JSON.stringify(reading.problems));
  const found = contents(await findStore(path));
  const which = reading.sum.files[1]!.read === 1 ? 'earlier' : 'later';
  expect(found).toEqual(contents(join(folder, which)));
  return which;
}

async function changesOfOneWrite(): Promise<number> {
  const path = join(folder, 'counted');
  cpSync(join(folder, 'earlier'), path, { recursive: true });
  strike('none', 0);
  const held = await holdStore(path, struck);
  if ('code' in held) throw new Error(held.seen);
  await writeStore(path, later, held);
  await held.release();
  const { changes, changesMade } = disk;
  // The counting sees what a store consists of: were it to miss them, no fault would strike them either. The folder above
  // is there already, so that none is made.
  for (const name of ['rename', 'sync', 'open w', 'writeFile', 'mkdtemp']) expect(changesMade).toContain(name);
  return changes;
}

test('a disk that is full at any write leaves the earlier store or the later one, whole, and the problem says which', async () => {
  const changes = await changesOfOneWrite();
  expect(changes).toBeGreaterThan(50);
  const seen = new Set<string>();
  for (let at = 1; at <= changes; at++) {
    const path = join(folder, `full-${at}`);
    const problems = await replaceUnder('full', at, path);
    const which = await standing(path);
    expect([at, problems.map(({ code }) => code)]).toEqual([at, which === 'earlier' ? ['cannot-write'] : []]);
    if (which === 'earlier') expect(problems[0]!.remedy).toContain('whatever was there before is as it was');
    seen.add(which);
    // The places around the change of stores are all healed, of the many writes before them every fifth.
    if (at % 5 === 0 || changes - at < 25) await healed(path);
    rmSync(path, { recursive: true, force: true });
  }
  expect([...seen].sort()).toEqual(['earlier', 'later']);
});

test('a process killed at any change leaves the earlier store or the later one, whole, and the next one says which', async () => {
  const changes = await changesOfOneWrite();
  const seen = new Set<string>();
  for (let at = 1; at <= changes; at++) {
    const path = join(folder, `dead-${at}`);
    await replaceUnder('dead', at, path);
    const which = await standing(path);
    const left = await unfinishedWrite(path, next);
    // Before a folder is begun and after all is cleared there is nothing to tell.
    if (left !== null) expect([at, left === 'new' ? 'later' : 'earlier']).toEqual([at, which]);
    seen.add(`${which} ${left}`);
    // The places around the change of stores are all healed, of the many writes before them every fifth.
    if (at % 5 === 0 || changes - at < 25) await healed(path);
    rmSync(path, { recursive: true, force: true });
  }
  expect([...seen].sort()).toEqual(['earlier earlier', 'earlier null', 'later new', 'later null']);
});

/** The next import finds its way, and leaves nothing of the stopped one. */
async function healed(path: string): Promise<void> {
  const held = await holdStore(path, next);
  if ('code' in held) throw new Error(held.seen);
  expect(await writeStore(path, later, held)).toEqual([]);
  await held.release();
  expect(await standing(path)).toBe('later');
  const name = path.split('/').at(-1)!;
  expect(readdirSync(folder).filter((entry) => entry.startsWith(`${name}.`))).toEqual([]);
}
