import { readFileSync, rmSync, writeFileSync } from 'node:fs';
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
  const second = rampbook(words);
  expect(second.exitCode).toBe(1);
  expect(second.err).toContain('file-exists');
  expect(readFileSync(to, 'utf8')).toBe(text);
});
