import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { readKey } from '../../src/command/pseudonym-key.js';
import { rampbook, root } from './run.js';
import { writeSmallSeason } from './small-season.js';

const folder = mkdtempSync(join(tmpdir(), 'key-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const at = (path: string) => join(folder, path);

for (const path of ['project/.git', 'project/crosswalks', 'exports/lakes', 'store', 'safe']) {
  mkdirSync(at(path), { recursive: true });
}
const beside = { crosswalks: [at('project/crosswalks/a.yaml')], from: at('exports'), store: at('store') };
const secret = 'sixteen bytes and more';

async function codeOf(path: string): Promise<string> {
  writeFileSync(path, secret);
  const key = await readKey(path, beside);
  if (!('problem' in key)) return 'taken';
  expect(JSON.stringify(key)).not.toContain(secret);
  return key.problem.code;
}

test('a key is refused where whoever gets the project, the exports or the store gets it too', async () => {
  expect(await codeOf(at('safe/key'))).toBe('taken');
  expect(await codeOf(at('key'))).toBe('taken');
  for (const path of ['project/key', 'project/crosswalks/key', 'exports/lakes/key', 'store/key']) {
    expect([path, await codeOf(at(path))]).toEqual([path, 'key-in-project']);
  }
  // A way round through a link leads to the same place, and a folder whose name only begins alike is another.
  symlinkSync(at('exports'), at('elsewhere'));
  expect(await codeOf(at('elsewhere/key'))).toBe('key-in-project');
  mkdirSync(at('exports-old'));
  expect(await codeOf(at('exports-old/key'))).toBe('taken');
});

test('a key may be given through the input, and a short one is refused there too', () => {
  const { crosswalk, exports, store } = writeSmallSeason({
    crosswalk: (text) => text.replace('owner: { private: drop }', 'owner: { field: craft, private: hash }'),
  });
  const words = ['import', crosswalk, '--from', exports, '--store', store, '--quiet'];
  const typed = (input: string) =>
    spawnSync(process.execPath, [join(root, 'bin/rampbook'), ...words, '--key', '-'], {
      cwd: root,
      encoding: 'utf8',
      input,
    });
  const short = typed('brief\n');
  expect([short.status, short.stderr.includes('short-key'), short.stderr.includes('brief')]).toEqual([1, true, false]);
  const taken = typed(`${secret}\n`);
  expect([taken.status, `${taken.stdout}${taken.stderr}`.includes(secret)]).toEqual([0, false]);
  const before = readFileSync(join(store, 'inspections.arrow'));
  // Without a key there is nothing new, and a key made by chance is no reason to change every pseudonym.
  expect(rampbook(words).out).toContain('Nothing new');
  expect(readFileSync(join(store, 'inspections.arrow')).equals(before)).toBe(true);
});
