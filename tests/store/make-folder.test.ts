import { existsSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { makeFolder } from '../../src/store/make-folder.js';

test('a folder is made with those above it that are missing, and may be there already', async () => {
  const folder = join(mkdtempSync(join(tmpdir(), 'rampbook-test-')), 'a', 'b', 'c');
  await makeFolder(folder);
  await makeFolder(folder);
  expect(existsSync(folder)).toBe(true);
});

test('a file in the way is told, not taken for a folder', async () => {
  const file = join(mkdtempSync(join(tmpdir(), 'rampbook-test-')), 'file');
  writeFileSync(file, '');
  await expect(makeFolder(join(file, 'below'))).rejects.toThrow(/ENOTDIR|EEXIST/);
});

test.skipIf(!existsSync('/proc/self'))(
  'a file system that takes no new folders is told, and does not keep the program for ever',
  async () => {
    await expect(makeFolder('/proc/none/store')).rejects.toThrow(/ENOENT/);
  },
);
