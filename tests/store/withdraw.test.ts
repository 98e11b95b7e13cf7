import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, unlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { importExports } from '../../src/intake/import-exports.js';
import { readPast } from '../../src/store/read-past.js';
import { writeStore } from '../../src/store/write-store.js';
import { testKey } from '../intake/small-import.js';

const folder = mkdtempSync(join(tmpdir(), 'withdraw-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const crosswalk = `
crosswalk: seasons
files:
  - files: stations.csv
    table: stations
    columns: { id: { field: station } }
    constants: { name: Landing, setting: launch, time_zone: America/Denver }
  - files: days-*.csv
    table: station_days
    columns: { site: { field: station }, day: { field: date, pattern: yyyy-MM-dd }, hours: { field: staff_hours } }
    constants: { state: open }
  - files: forms-*.csv
    table: inspections
    time_zone: America/Denver
    columns:
      id: { field: inspection }
      start: { field: started_at, pattern: yyyy-MM-dd HH:mm }
    constants: { station: L1, direction: arriving, extent: full, watercraft_type: open motorboat, outcome: cleared }
  - files: checks-*.csv
    table: checks
    columns: { insp: { field: inspection } }
    constants: { component: gear, side: none, state: clean }
`;

// The second season repeats a key of the first, and is set aside for it; the last evening of 2024 is 2025 in Greenwich.
const files: Readonly<Record<string, string>> = {
  'stations.csv': 'id\nL1\n',
  'days-2024.csv': 'site,day,hours\nL1,2024-06-01,8\n',
  'days-2025.csv': 'site,day,hours\nL1,2025-06-01,8\n',
  'forms-2024.csv': 'id,start\n1,2024-06-01 08:00\n2,2024-12-31 20:00\n',
  'forms-2025.csv': 'id,start\n2,2025-06-01 08:00\n3,2025-06-01 09:00\n',
  'checks-2024.csv': 'insp\n1\n',
  'checks-2025.csv': 'insp\n3\n',
};

function season(name: string) {
  const at = join(folder, name);
  mkdirSync(join(at, 'exports'), { recursive: true });
  for (const [file, text] of Object.entries(files)) writeFileSync(join(at, 'exports', file), text);
  writeFileSync(join(at, 'seasons.yaml'), crosswalk);
  return at;
}

async function run(at: string, asked: { withdraw?: number[]; callBack?: number[] } = {}) {
  const store = join(at, 'store');
  const past = await readPast(store);
  const result = await importExports({
    crosswalks: [join(at, 'seasons.yaml')],
    from: join(at, 'exports'),
    key: testKey,
    progress: () => {},
    program: 'this',
    past,
    ...asked,
  });
  if (result.problems.length === 0 && result.isNew) expect(await writeStore(store, result)).toEqual([]);
  return result;
}

const contents = (at: string) =>
  Object.fromEntries(readdirSync(at).map((name) => [name, readFileSync(join(at, name), 'latin1')]));
const kept = ({ sum }: Awaited<ReturnType<typeof run>>) => sum.files.map((file) => `${file.file} ${file.kept}`);

test('a season withdrawn takes all its files along, and what it hid comes back; called back, all is as before', async () => {
  const at = season('whole');
  const first = await run(at);
  expect(first.sum.files.find(({ file }) => file === 'forms-2025.csv')).toMatchObject({ kept: 1, setAside: 1 });
  const before = contents(join(at, 'store'));
  const without = await run(at, { withdraw: [2024] });
  expect(kept(without)).toEqual(['stations.csv 1', 'days-2025.csv 1', 'forms-2025.csv 2', 'checks-2025.csv 1']);
  expect(without.sum.withdrawn).toEqual({
    seasons: [2024],
    files: [
      { file: 'checks-2024.csv', read: 1 },
      { file: 'days-2024.csv', read: 1 },
      { file: 'forms-2024.csv', read: 2 },
    ],
  });
  expect(without.sum.fingerprint).not.toBe(first.sum.fingerprint);
  await run(at, { callBack: [2024] });
  expect(contents(join(at, 'store'))).toEqual(before);
});

test('a season stays withdrawn until it is called back, whatever is imported meanwhile', async () => {
  const at = season('stays');
  await run(at, { withdraw: [2024] });
  expect((await run(at)).isNew).toBe(false);
  writeFileSync(join(at, 'exports', 'forms-2024-late.csv'), 'id,start\n7,2024-08-01 08:00\n');
  writeFileSync(join(at, 'exports', 'forms-2025-late.csv'), 'id,start\n8,2025-08-01 08:00\n');
  const late = await run(at);
  expect(late.sum.files.map(({ file }) => file)).toContain('forms-2025-late.csv');
  expect(late.sum.withdrawn!.files.map(({ file }) => file)).toContain('forms-2024-late.csv');
  // The files that were left out are not read again for it.
  expect(late.filesRead).toEqual(['forms-2025-late.csv']);
  expect((await run(at)).isNew).toBe(false);
  unlinkSync(join(at, 'exports', 'forms-2024-late.csv'));
  expect((await run(at)).sum.withdrawn!.files).toHaveLength(3);
});

test('a file that two seasons share stops a withdrawal of one of them, and the store stays', async () => {
  const at = season('shared');
  writeFileSync(join(at, 'exports', 'forms-2024.csv'), `${files['forms-2024.csv']}9,2025-03-01 08:00\n`);
  await run(at);
  const before = contents(join(at, 'store'));
  const { problems } = await run(at, { withdraw: [2024] });
  expect(problems).toMatchObject([{ code: 'seasons-share-file', seen: 'rows of 2024, 2025' }]);
  expect(contents(join(at, 'store'))).toEqual(before);
  const both = await run(at, { withdraw: [2024, 2025] });
  expect(kept(both)).toEqual(['stations.csv 1']);
});
