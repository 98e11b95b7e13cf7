import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readCrosswalk } from '../../src/intake/read-crosswalk.js';
import { tables } from '../../src/record/tables.js';
import { newFolder, rampbook, root } from './run.js';

const folder = join(newFolder(), 'season-2026');
const started = rampbook(['start', folder]);
const crosswalk = readFileSync(join(folder, 'my-exports.crosswalk.yaml'), 'utf8');

test('a folder is set up with notebooks, a crosswalk and what to do next in five lines', () => {
  expect(started.exitCode).toBe(0);
  expect(started.out.trim().split('\n').slice(1)).toHaveLength(5);
  expect(readdirSync(folder).sort()).toEqual(['.gitignore', 'exports', 'my-exports.crosswalk.yaml', 'notebooks']);
  for (const name of readdirSync(join(folder, 'notebooks'))) {
    expect(readFileSync(join(folder, 'notebooks', name), 'utf8')).toBe(
      readFileSync(join(root, 'notebooks', name), 'utf8'),
    );
  }
  expect(readdirSync(join(folder, 'notebooks'))).toContain('season.md');
  expect(readFileSync(join(folder, '.gitignore'), 'utf8').split('\n')).toEqual(
    expect.arrayContaining(['/exports/', '/store/']),
  );
});

test('the crosswalk names every field, and can be read as it stands and with every line made live', () => {
  for (const text of [crosswalk, crosswalk.replaceAll('#: ', '')]) {
    const { crosswalk: read, problems } = readCrosswalk('my-exports.crosswalk.yaml', text);
    expect(problems).toEqual([]);
    expect(read!.files.map(({ table }) => table.name).sort()).toEqual(tables.map(({ name }) => name).sort());
  }
  const { crosswalk: whole } = readCrosswalk('my-exports.crosswalk.yaml', crosswalk.replaceAll('#: ', ''));
  for (const { table, fields } of whole!.files) {
    expect(fields.map(({ field }) => field.name).sort()).toEqual(table.fields.map(({ name }) => name).sort());
  }
});

test('a folder with anything in it is left as it is', () => {
  const taken = newFolder();
  writeFileSync(join(taken, 'letter.txt'), 'mine');
  const { exitCode, err } = rampbook(['start', taken]);
  expect([exitCode, err.includes('[not-empty]'), readdirSync(taken)]).toEqual([1, true, ['letter.txt']]);
  expect(rampbook(['start', join(taken, 'letter.txt')]).err).toContain('[is-a-file]');
  mkdirSync(join(taken, 'empty'));
  expect(rampbook(['start', join(taken, 'empty')]).exitCode).toBe(0);
});
