import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { rampbook } from './run.js';
import { type SmallSeason, writeSmallSeason } from './small-season.js';

const importWords = ({ crosswalk, exports, store }: SmallSeason): string[] => [
  'import',
  crosswalk,
  '--from',
  exports,
  '--store',
  store,
];

test('an import says what was read, kept and set aside, in JSON by file and by code', () => {
  const season = writeSmallSeason();
  const { exitCode, out } = rampbook([...importWords(season), '--json']);
  expect(exitCode).toBe(0);
  const account = JSON.parse(out);
  expect(account).toMatchObject({
    read: 6,
    kept: 4,
    set_aside: 2,
    problems: { 'not-a-date': 1, 'unknown-reference': 1 },
  });
  expect(
    account.files.map((file: { file: string; read: number; kept: number; set_aside: number }) => [
      file.file,
      file.read,
      file.kept,
      file.set_aside,
    ]),
  ).toEqual([
    ['stations.csv', 1, 1, 0],
    ['forms.csv', 5, 3, 2],
  ]);
});

test('a file that gives several kinds of records is counted as one file, and each line says of which records', () => {
  const season = writeSmallSeason();
  const text = readFileSync(season.crosswalk, 'utf8');
  const more = `${text.trimEnd()}\n    also:\n      - table: spending\n        where: "no"\n        constants: { fiscal_year: 2025, category: supplies, amount: 1 }\n        columns: { "no": { field: entry } }\n`;
  writeFileSync(season.crosswalk, more);
  const { out } = rampbook(importWords(season));
  const told = out.split('\n').map((line) => line.trim().split(/ {2,}/u));
  expect(told.filter(([file]) => file === 'forms.csv').map(([, records]) => records)).toEqual([
    'inspections',
    'spending',
  ]);
  expect(told.some(([file]) => file === '2 files')).toBe(true);
});

test('set-aside.csv names file, line, column, what was seen, code, reason and remedy', () => {
  const season = writeSmallSeason();
  rampbook(importWords(season));
  const lines = readFileSync(join(season.store, 'set-aside.csv'), 'utf8').trim().split(/\r?\n/);
  expect(lines[0]).toBe('file,line,column,seen,code,reason,remedy');
  expect(lines.slice(1).map((line) => line.split(',').slice(0, 5))).toEqual([
    ['forms.csv', '5', 'start', '2025-06-31 09:00', 'not-a-date'],
    ['forms.csv', '6', 'site', 'b', 'unknown-reference'],
  ]);
});

test('a private column reaches nothing that is written', () => {
  const season = writeSmallSeason();
  const { out, err } = rampbook(importWords(season));
  const written = readdirSync(season.store, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => readFileSync(join(entry.parentPath, entry.name), 'latin1'));
  expect([out, err, ...written].filter((text) => text.includes('Secretmarker'))).toEqual([]);
});

describe('bad input gets a clear problem with its remedy, exit code 1, and nothing half-written', () => {
  const cases: readonly [string, (season: SmallSeason) => string[], string][] = [
    [
      'a crosswalk that is not there',
      (season) => ['import', join(season.folder, 'none.yaml'), '--from', season.exports, '--store', season.store],
      'no-such-file',
    ],
    [
      'a folder of exports that is not there',
      (season) => ['import', season.crosswalk, '--from', join(season.folder, 'none'), '--store', season.store],
      'no-such-f',
    ],
    [
      'a crosswalk that is a folder',
      (season) => ['import', season.exports, '--from', season.exports, '--store', season.store],
      'is-a-folder',
    ],
  ];
  test.each(cases)('%s', (_, words, code) => {
    const season = writeSmallSeason();
    const { exitCode, err } = rampbook(words(season));
    expect(err).toContain(code);
    expect(exitCode).toBe(1);
    expect(existsSync(season.store)).toBe(false);
    expect(readdirSync(season.folder).sort()).toEqual(['exports', 'small.crosswalk.yaml']);
  });

  test('an export that is empty', () => {
    const season = writeSmallSeason({ forms: () => [] });
    const { exitCode, err } = rampbook(importWords(season));
    expect([exitCode, err.includes('empty-file'), existsSync(season.store)]).toEqual([1, true, false]);
  });

  test('a crosswalk with an unknown field, told at its line and column with the nearest name', () => {
    const season = writeSmallSeason({
      crosswalk: (text) => text.replace('field: watercraft_type', 'field: watercraft_typ'),
    });
    const { exitCode, err } = rampbook(importWords(season));
    expect(exitCode).toBe(1);
    expect(err).toMatch(/small\.crosswalk\.yaml:26:\d+ .*"watercraft_typ"/);
    expect(err).toContain('watercraft_type');
    expect(existsSync(season.store)).toBe(false);
  });

  test('a column that the crosswalk does not name stops the file: nothing is guessed', () => {
    const season = writeSmallSeason({ forms: (lines) => lines.map((line) => (line === '' ? '' : `${line},extra`)) });
    const { exitCode, err } = rampbook(importWords(season));
    expect([exitCode, err.includes('unknown-column'), existsSync(season.store)]).toEqual([1, true, false]);
  });

  test('a store that is some other folder is left as it is', () => {
    const season = writeSmallSeason();
    mkdirSync(season.store);
    writeFileSync(join(season.store, 'letter.txt'), 'mine');
    const { exitCode, err } = rampbook(importWords(season));
    expect([exitCode, err.includes('not-a-store')]).toEqual([1, true]);
    expect(readdirSync(season.store)).toEqual(['letter.txt']);
    // It is told before anything is read: the exports are not even looked for.
    expect(rampbook(importWords({ ...season, exports: join(season.folder, 'nowhere') })).err).toContain('not-a-store');
  });

  test('a key that is too short to keep a secret', () => {
    const season = writeSmallSeason();
    const key = join(season.folder, 'key');
    writeFileSync(key, 'short');
    const { exitCode, err } = rampbook([...importWords(season), '--key', key]);
    expect([exitCode, err.includes('short-key'), existsSync(season.store)]).toEqual([1, true, false]);
  });
});

test('a failed import leaves the store that was there', () => {
  const season = writeSmallSeason();
  rampbook(importWords(season));
  const before = readFileSync(join(season.store, 'store.json'), 'utf8');
  writeFileSync(join(season.exports, 'forms.csv'), '');
  expect(rampbook(importWords(season)).exitCode).toBe(1);
  expect(readFileSync(join(season.store, 'store.json'), 'utf8')).toBe(before);
});
