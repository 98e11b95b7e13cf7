import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { importExports } from '../../src/intake/import-exports.js';
import { readPast } from '../../src/store/read-past.js';
import { writeStore } from '../../src/store/write-store.js';
import { stationCrosswalk, stationFiles, testKey } from '../intake/small-import.js';

const folder = mkdtempSync(join(tmpdir(), 'slipped-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

// One row has lost its first cells, so that the hull's number stands where the key should; another only its last.
const inspections = ['1,L1,2025-05-01 08:00,,P,,C,', 'MARKHULL,C,', '3,L1,2025-05-01 09:00,,P,MARKHULL,C'];

async function run(checks: readonly string[], follows: boolean) {
  const files = stationFiles({ inspections, checks });
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  writeFileSync(join(folder, 'c.yaml'), stationCrosswalk);
  const store = join(folder, follows ? 'followed' : 'anew');
  const result = await importExports({
    crosswalks: [join(folder, 'c.yaml')],
    from: folder,
    key: testKey,
    progress: () => {},
    program: 'this',
    past: follows ? await readPast(store) : null,
  });
  expect(await writeStore(store, result)).toEqual([]);
  return result;
}

const contents = (name: string) =>
  Object.fromEntries(
    readdirSync(join(folder, name)).map((file) => [file, readFileSync(join(folder, name, file)).toString('latin1')]),
  );

test('a private cell that slipped into the place of a key is kept nowhere, and what refers to lost keys is told alike', async () => {
  await run(['1,gear,none,clean,'], true);
  expect(Object.values(contents('followed')).filter((text) => text.includes('MARK'))).toEqual([]);
  // A look that comes later follows the row whose key was not kept.
  const later = await run(['1,gear,none,clean,', '3,gear,none,clean,'], true);
  expect(later.filesRead).toEqual(['checks.csv']);
  expect(later.setAside.map(({ code }) => code)).toEqual(['ragged-row', 'ragged-row', 'parent-set-aside']);
  await run(['1,gear,none,clean,', '3,gear,none,clean,'], false);
  expect(contents('followed')).toEqual(contents('anew'));
  expect(Object.values(contents('followed')).filter((text) => text.includes('MARK'))).toEqual([]);
});
