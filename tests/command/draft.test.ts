import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { newFolder, rampbook } from './run.js';

const folder = newFolder();
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('a draft is written once, never over a file, and says what is open', () => {
  writeFileSync(join(folder, 'spending.csv'), 'entry,fy,kind,dollars\nE1,2025,TRAV,10\n');
  const to = join(folder, 'office.crosswalk.yaml');
  const words = ['draft', join(folder, 'spending.csv'), '--to', to];
  const first = rampbook(words);
  expect([first.exitCode, first.err]).toEqual([0, '']);
  expect(first.out).toContain('spending.csv');
  expect(first.out).toContain('refuses to import');
  const text = readFileSync(to, 'utf8');
  expect(text).toContain('crosswalk: office');
  expect(first.out).toContain(`import it with --from`);
  const second = rampbook(words);
  expect(second.exitCode).toBe(1);
  expect(second.err).toContain('file-exists');
  expect(readFileSync(to, 'utf8')).toBe(text);
});

test('names of waters that match none are written beside it, and neither file is written over another', () => {
  const dated = (line: string) => `${line}\n`.repeat(3);
  writeFileSync(
    join(folder, 'waters.csv'),
    'id,water name,state,status,since\nlong,Long Lake,MT,negative,2020-01-31\nheron,Heron Lake,MT,positive,2020-01-31\n',
  );
  writeFileSync(
    join(folder, 'inspections.csv'),
    `insp,start,last water,last state\n${dated('1,2025-05-13 08:00,Lost Lake,MT')}${dated('2,2025-05-14 08:00,Long Lake,MT')}`,
  );
  const to = join(folder, 'ramps.crosswalk.yaml');
  const words = ['draft', join(folder, 'waters.csv'), join(folder, 'inspections.csv'), '--to', to];
  const aliases = join(folder, 'ramps.aliases.csv');
  writeFileSync(aliases, 'mine');
  expect(rampbook(words).err).toContain('ramps.aliases.csv');
  expect([readFileSync(aliases, 'utf8'), existsSync(to)]).toEqual(['mine', false]);
  rmSync(aliases);
  expect(rampbook(words).out).toContain('1 names of waters');
  expect(readFileSync(aliases, 'utf8')).toBe(
    'name,region,waterbody,times,nearest,why\nLost Lake,MT,,3,Long Lake,no water of that name is known\n',
  );
});

test('a folder that is named alone is where the paths of the draft start', () => {
  const exports = newFolder();
  writeFileSync(join(exports, 'spending.csv'), 'entry,fy,kind,dollars\nE1,2025,TRAV,10\n');
  const to = join(folder, 'whole.crosswalk.yaml');
  expect(rampbook(['draft', exports, '--to', to]).exitCode).toBe(0);
  expect(readFileSync(to, 'utf8')).toContain('files: "spending.csv"');
});
