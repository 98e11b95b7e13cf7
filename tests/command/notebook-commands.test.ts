import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { type Ran, rampbook } from './run.js';
import { type SmallSeason, writeSmallSeason } from './small-season.js';

let season: SmallSeason;

beforeAll(() => {
  season = writeSmallSeason();
  expect(rampbook(['import', season.crosswalk, '--from', season.exports, '--store', season.store]).exitCode).toBe(0);
});

function withNotebook(words: readonly string[], lines: readonly string[]): Ran {
  const file = join(season.folder, 'small.md');
  writeFileSync(file, lines.join('\n'));
  return rampbook([words[0]!, file, ...words.slice(1), '--store', season.store]);
}

const figures = [
  '# Small season',
  '',
  '| figure | formula | shown as |',
  '|---|---|---|',
  '| inspected | count(inspections) | whole |',
  '| intercepted | count(inspections where outcome is "intercepted") | whole |',
  '| interception | rate(intercepted, inspected) | per 1,000 |',
  '',
  'Sheet by_type: each watercraft_type of inspections, highest inspected first.',
  '',
  '| column | formula | shown as |',
  '|---|---|---|',
  '| inspected | count() | whole |',
  '| interception | rate(count(where outcome is "intercepted"), inspected) | per 1,000 |',
];

test('evaluate gives an estimate as value, low, high, numerator, denominator, method and unit', () => {
  const { exitCode, out } = withNotebook(['evaluate', '--json'], figures);
  expect(exitCode).toBe(0);
  const { interception, inspected } = JSON.parse(out).figures;
  expect(inspected).toMatchObject({ value: 3, low: null, high: null, unit: 'inspections' });
  expect(interception).toMatchObject({ numerator: 1, denominator: 3, unit: '' });
  expect(interception.value).toBeCloseTo(1 / 3, 12);
  expect(interception.low).toBeGreaterThanOrEqual(0);
  expect(interception.high).toBeGreaterThan(1 / 3);
  expect(interception.method).toMatch(/Clopper-Pearson/);
});

test('a sheet has a row a group, and zero cases are never a bare zero', () => {
  const { rows } = JSON.parse(withNotebook(['evaluate', '--json'], figures).out).sheets.by_type;
  expect(
    rows.map((row: Record<string, { value: unknown }>) => [row.watercraft_type!.value, row.inspected!.value]),
  ).toEqual([
    ['open motorboat', 2],
    ['paddlecraft', 1],
  ]);
  // One look and no find: the one-sided 95 % upper limit is 1 − 0.05^(1/1) (Hanley & Lippman-Hand 1983).
  expect(rows[1].interception).toMatchObject({ value: 0, sides: 'upper' });
  expect(rows[1].interception.high).toBeCloseTo(0.95, 10);
});

test('a value to choose by is known as it stands, capitals and all, or by its name', () => {
  const capitals = writeSmallSeason({
    crosswalk: (text) => text.replace('code: { field: station }', 'code: { field: station, codes: { a: ALD } }'),
    forms: (lines) => lines,
  });
  const crosswalk = readFileSync(capitals.crosswalk, 'utf8').replace(
    'site: { field: station }',
    'site: { field: station, codes: { a: ALD } }',
  );
  writeFileSync(capitals.crosswalk, crosswalk);
  rampbook(['import', capitals.crosswalk, '--from', capitals.exports, '--store', capitals.store]);
  const file = join(capitals.folder, 'small.md');
  writeFileSync(file, figures.join('\n'));
  for (const value of ['ALD', 'ald', 'Alder', 'ALDER']) {
    const { exitCode, out } = rampbook([
      'evaluate',
      file,
      '--store',
      capitals.store,
      '--only',
      `station=${value}`,
      '--json',
    ]);
    expect([value, exitCode, exitCode === 0 && JSON.parse(out).figures.inspected.value]).toEqual([value, 0, 3]);
  }
});

test('a year that is a key of a sheet is shown without marks between its digits, in JSON too', () => {
  const lines = figures.map((line) => line.replace('each watercraft_type', 'each season'));
  const [row] = JSON.parse(withNotebook(['evaluate', '--json'], lines).out).sheets.by_type.rows;
  expect(row.season).toMatchObject({ value: 2025, shown: '2025' });
});

test('trace shows formula, what it stands on, and records by file and line', () => {
  const json = JSON.parse(withNotebook(['trace', 'intercepted', '--json'], figures).out);
  expect(json).toMatchObject({
    figure: 'intercepted',
    formula: 'count(inspections where outcome is "intercepted")',
    value: 1,
    counts: [
      {
        counted: 1,
        considered: 3,
        left_out: { not_matching: 2, not_known: 0, without_value: 0 },
        files: [{ file: 'forms.csv', rows: 1, lines: ['3'] }],
        set_aside: [{ file: 'forms.csv', rows: 2, problems: { 'not-a-date': 1, 'unknown-reference': 1 } }],
      },
    ],
  });
  const { out, exitCode } = withNotebook(['trace', 'interception'], figures);
  expect(exitCode).toBe(0);
  expect(out).toContain('forms.csv: 3 rows, lines 2-4');
});

test('a trace explains the number of the choice that evaluate and report count, and says which it is', () => {
  const choosable = [
    ...figures.slice(0, 2),
    '| input | value | unit | source |',
    '|---|---|---|---|',
    '| least | 1 | | the test |',
    '',
    ...figures.slice(2),
    '',
    '| figure | formula |',
    '|---|---|',
    '| weighed | count(inspections) * least |',
  ];
  const chosen = ['--only', 'watercraft_type=open motorboat', '--with', 'least=3', '--json'];
  const evaluated = JSON.parse(withNotebook(['evaluate', ...chosen], choosable).out);
  const traced = JSON.parse(withNotebook(['trace', 'weighed', ...chosen], choosable).out);
  expect([evaluated.figures.weighed.value, traced.value]).toEqual([6, 6]);
  expect(traced.choice[0]).toBe('Shown: watercraft type open motorboat; least 3 instead of the notebook’s 1.');
  expect(traced.counts).toMatchObject([{ counted: 2, files: [{ rows: 2, lines: ['2-3'] }] }]);
  const cell = withNotebook(['trace', 'by_type.inspected[paddlecraft]', ...chosen.slice(0, 2)], choosable);
  expect([cell.exitCode, cell.err]).toEqual([1, expect.stringContaining('unknown-cell')]);
  const pages = join(season.folder, 'chosen');
  for (const command of [['trace', 'weighed'], ['evaluate'], ['report', '--to', pages]]) {
    const { exitCode, err } = withNotebook([...command, '--with', 'lest=3'], choosable);
    expect([exitCode, err]).toEqual([1, expect.stringContaining('Did you mean "least"?')]);
  }
  expect(existsSync(pages)).toBe(false);
});

test('a notebook that names an unknown column says where and what is near, and the rest is computed', () => {
  const wrong = [...figures.slice(0, 5), '| bad | count(inspections where outcom is "intercepted") | whole |'];
  const { exitCode, err, out } = withNotebook(['evaluate', '--json'], wrong);
  expect(exitCode).toBe(1);
  expect(err).toMatch(/small\.md:6:33 .*outcom/);
  expect(err).toContain('outcome');
  expect(JSON.parse(out).figures.inspected.value).toBe(3);
  const page = join(season.folder, 'pages', 'small.html');
  const reported = withNotebook(['report', '--to', join(season.folder, 'pages')], wrong);
  expect(reported.exitCode).toBe(1);
  expect(readFileSync(page, 'utf8')).toContain('outcom');
});

test('a loop among figures is named whole', () => {
  const loop = [
    '| figure | formula |',
    '|---|---|',
    '| a | b + 1 |',
    '| b | c + 1 |',
    '| c | a + 1 |',
    '| d | 1 + 1 |',
  ];
  const { exitCode, err, out } = withNotebook(['evaluate', '--json'], loop);
  expect([exitCode, err.includes('a → b → c → a')]).toEqual([1, true]);
  expect(JSON.parse(out).figures.d.value).toBe(2);
});

test('a store or notebook that is not there, or is not one, is a problem with its remedy', () => {
  const notebook = join(season.folder, 'small.md');
  writeFileSync(notebook, figures.join('\n'));
  const other = join(season.folder, 'other');
  mkdirSync(other, { recursive: true });
  const empty = join(season.folder, 'empty.md');
  writeFileSync(empty, '');
  const pages = join(season.folder, 'no-pages');
  const codes = [
    rampbook(['evaluate', notebook, '--store', join(season.folder, 'none')]),
    rampbook(['report', notebook, '--store', other, '--to', pages]),
    rampbook(['evaluate', join(season.folder, 'none.md'), '--store', season.store]),
    rampbook(['evaluate', season.folder, '--store', season.store]),
    rampbook(['report', empty, '--store', season.store, '--to', pages]),
    rampbook(['trace', notebook, 'interceptio', '--store', season.store]),
  ].map(({ exitCode, err }) => [exitCode, /\[([a-z-]+)\]/.exec(err)?.[1]]);
  expect(codes).toEqual([
    [1, 'no-such-store'],
    [1, 'not-a-store'],
    [1, 'no-such-file'],
    [1, 'is-a-folder'],
    [1, 'empty-file'],
    [1, 'unknown-figure'],
  ]);
  expect(existsSync(join(pages, 'empty.html'))).toBe(false);
});

test('an input that only one of the notebooks has is told on its page alone', () => {
  const [having, without] = ['with.md', 'without.md'].map((name) => join(season.folder, name)) as [string, string];
  const inputs = ['', '| input | value | unit | source |', '|---|---|---|---|', '| least | 1 | | the test |'];
  writeFileSync(having, [...figures, ...inputs].join('\n'));
  writeFileSync(without, figures.join('\n'));
  const to = join(season.folder, 'one-input');
  const words = ['report', having, without, '--store', season.store, '--to', to, '--with', 'least=3'];
  expect(rampbook(words).exitCode).toBe(0);
  const pageOf = (name: string) => readFileSync(join(to, name), 'utf8');
  expect(pageOf('with.html')).toContain('least 3 instead of the notebook’s 1');
  expect(pageOf('without.html')).not.toContain('least 3');
});

test('two notebooks of one name do not overwrite each other’s page', () => {
  const folders = ['one', 'two'].map((name) => join(season.folder, name));
  const files = folders.map((folder) => {
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, 'same.md'), `# ${folder}`);
    return join(folder, 'same.md');
  });
  const to = join(season.folder, 'same-pages');
  const { exitCode, err } = rampbook(['report', ...files, '--store', season.store, '--to', to]);
  expect([exitCode, err.includes('name-taken')]).toEqual([1, true]);
  expect(readFileSync(join(to, 'same.html'), 'utf8')).toContain(folders[0]);
});

test('wrong use is exit code 2, and help is 0 and teaches', () => {
  expect(rampbook([]).exitCode).toBe(2);
  expect(rampbook(['evaluate']).exitCode).toBe(2);
  expect(rampbook(['imprt']).exitCode).toBe(2);
  expect(rampbook(['report', 'a.md', '--stor', 'x']).exitCode).toBe(2);
  const help = rampbook(['--help']);
  expect(help.exitCode).toBe(0);
  for (const command of ['import', 'report', 'evaluate', 'trace']) {
    expect(help.out).toMatch(new RegExp(`^  ${command} `, 'm'));
    const own = rampbook([command, '--help']);
    expect([own.exitCode, /^Examples?:/m.test(own.out)]).toEqual([0, true]);
  }
});

test('pages are not written into a store, whose next import would sweep them away', () => {
  const before = readdirSync(season.store);
  const { exitCode, err } = withNotebook(['report', '--to', season.store], ['# Small']);
  expect([exitCode, err.includes('[is-a-store]')]).toEqual([1, true]);
  expect(readdirSync(season.store)).toEqual(before);
});

test('a season of which there is no inspection is told, with those there are, and is no mistake of the notebook', () => {
  const lines = [
    '| input | value | unit |',
    '|---|---|---|',
    '| this_season | 1999 | year |',
    '| price_year | 1998 | year |',
  ];
  const { exitCode, err } = withNotebook(['evaluate'], ['# Small', '', ...lines]);
  expect([exitCode, err.match(/no-such-season/g)?.length]).toEqual([0, 1]);
  expect(err).toMatch(/this_season, 1999.*a season of the records counted: \d{4}/);
});
