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
  expect(readdirSync(join(folder, 'notebooks'))).toEqual(readdirSync(join(root, 'notebooks')));
  expect(readdirSync(join(folder, 'notebooks'))).toContain('season.md');
  expect(readFileSync(join(folder, '.gitignore'), 'utf8').split('\n')).toEqual(
    expect.arrayContaining(['/exports/', '/store/']),
  );
});

test('the notebooks ask about the season of the folder, and tell nothing of the demo', () => {
  for (const name of readdirSync(join(folder, 'notebooks'))) {
    const text = readFileSync(join(folder, 'notebooks', name), 'utf8');
    expect(text).not.toMatch(
      /quillwater|basin's|positive lake|invented|2023|alder-landing|26\.67|1,755,000|\bdemo\b/iu,
    );
    expect(text).toMatch(/\| this_season +\| 2026 +\|/u);
    const inputs = (of: string) => [...of.matchAll(/^\| (\w+) /gmu)].map(([, row]) => row);
    expect(inputs(text)).toEqual(inputs(readFileSync(join(root, 'notebooks', name), 'utf8')));
  }
  const brief = readFileSync(join(folder, 'notebooks', 'board-brief.md'), 'utf8');
  expect(brief).toContain('# Board brief 2027:');
  expect(brief).toMatch(/\| wage +\| +\| dollars a staff hour \| to be filled in/u);
  const other = join(newFolder(), 'ours');
  expect(rampbook(['start', other, '--season', '2024']).exitCode).toBe(0);
  expect(readFileSync(join(other, 'notebooks', 'season.md'), 'utf8')).toContain('# Season report 2024');
  expect(rampbook(['start', join(newFolder(), 'b'), '--season', 'last']).err).toContain('[not-a-year]');
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
