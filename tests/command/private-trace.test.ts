import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { type Ran, rampbook } from './run.js';
import { type SmallSeason, writeSmallSeason } from './small-season.js';

// Secretmarker stands in every private cell of the exports: once in a column that is dropped, once in one that is hashed.

let season: SmallSeason;
let notebook: string;
let evaluated: Ran;

beforeAll(() => {
  season = writeSmallSeason({
    crosswalk: (text) =>
      text.replace('owner: { private: drop }', 'owner: { private: drop }\n      hull: { field: craft, private: hash }'),
    forms: (lines) =>
      lines.map((line, at) => (line === '' ? line : `${line},${at === 0 ? 'hull' : `SecretmarkerHull${at % 3}`}`)),
  });
  const ran = rampbook(['import', season.crosswalk, '--from', season.exports, '--store', season.store]);
  expect(ran).toMatchObject({ exitCode: 0 });
  notebook = join(season.folder, 'crafts.md');
  writeFileSync(
    notebook,
    [
      '# Crafts',
      '',
      '| figure | formula |',
      '|---|---|',
      '| crafts | distinct(craft of inspections) |',
      '| names | listed(craft of inspections) |',
      '',
      'Sheet by_craft: each craft of inspections.',
      '',
      '| column | formula |',
      '|---|---|',
      '| seen | count() |',
      '| part | share(seen, sum(seen of by_craft)) |',
      '',
      'Sheet found: interceptions of inspections, by craft.',
      '',
    ].join('\n'),
  );
  evaluated = rampbook(['evaluate', notebook, '--store', season.store, '--json']);
});

test('private values are in no account, page or answer, by column, key, list or set-aside row', () => {
  const pages = join(season.folder, 'pages');
  const store = ['--store', season.store];
  const { figures, sheets } = JSON.parse(evaluated.out);
  expect(figures.crafts.value).toBe(3);
  const [first] = sheets.by_craft.rows;
  const answers = [
    evaluated,
    rampbook(['trace', notebook, 'crafts', ...store]),
    rampbook(['trace', notebook, 'names', ...store, '--json']),
    rampbook(['trace', notebook, `by_craft.part[${first.craft.value}]`, ...store, '--json']),
    rampbook(['trace', notebook, 'by_craft.part[nobody]', ...store]),
    rampbook(['report', notebook, ...store, '--to', pages]),
  ];
  expect(answers.map(({ exitCode }) => exitCode)).toEqual([0, 0, 0, 0, 1, 0]);
  const page = readFileSync(join(pages, 'crafts.html'), 'utf8');
  expect(page).toContain('class="cells"');
  for (const said of [page, ...answers.flatMap(({ out, err }) => [out, err])])
    expect(said).not.toMatch(/secretmarker/i);
});

test('the account of a finding’s cell names the records of its row by file and line', () => {
  const { found } = JSON.parse(evaluated.out).sheets;
  const column = found.columns.find(({ role }: { role: string }) => role === 'value').name;
  const row = found.rows[0].craft.value;
  const { exitCode, out } = rampbook(['trace', notebook, `found.${column}[${row}]`, '--store', season.store, '--json']);
  expect(exitCode).toBe(0);
  const { counts } = JSON.parse(out);
  expect(counts[0].files).toEqual([{ file: 'forms.csv', rows: counts[0].counted, lines: expect.any(Array) }]);
});

test('a problem of the language names the section of its reference', () => {
  const wrong = join(season.folder, 'wrong.md');
  writeFileSync(wrong, '# Wrong\n\n| figure | formula |\n|---|---|\n| bad | cout(inspections) |\n');
  const { exitCode, err } = rampbook(['evaluate', wrong, '--store', season.store, '--json']);
  expect(exitCode).toBe(1);
  expect(err).toContain('See “Functions” in the reference of the language.');
});
