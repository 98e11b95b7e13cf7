import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { root } from '../command/run.js';
import { writeSmallSeason } from '../command/small-season.js';
import { lockedForUsers, packAndInstall, runThere } from './installed.js';

const installed = packAndInstall();
const season = writeSmallSeason();
afterAll(() => {
  for (const folder of [installed.folder, season.folder]) rmSync(folder, { recursive: true, force: true });
});
const rampbook = (...words: string[]) => runThere(installed, ['node_modules/rampbook/bin/rampbook', ...words]);

test('the package holds the program, its types and the notebooks that start a folder, and nothing else', () => {
  const wanted =
    /^(?:bin\/rampbook|LICENSE|README\.md|package\.json|notebooks\/[a-z-]+\.md|dist\/[a-z0-9/-]+\.(?:js|d\.ts))$/;
  expect(installed.files.filter((path) => !wanted.test(path))).toEqual([]);
  for (const path of ['LICENSE', 'README.md', 'bin/rampbook', 'dist/command/main.js', 'dist/library/library.d.ts']) {
    expect(installed.files).toContain(path);
  }
  for (const name of readdirSync(join(root, 'notebooks'))) expect(installed.files).toContain(`notebooks/${name}`);
  // Half a megabyte of it are the scripts that pages carry.
  expect(installed.size).toBeLessThan(1_500_000);
});

test('every package that the program asks for is declared, every one declared is asked for, and none runs a script when installed', () => {
  const asked = new Set<string>();
  const asking = /^(?:import|export)[^\n]* from '([^.'\n]+)';$|\bimport\('([a-z]+)'\)/gm;
  for (const path of installed.files.filter((one) => one.startsWith('dist/'))) {
    const text = readFileSync(join(installed.folder, 'node_modules/rampbook', path), 'utf8');
    for (const [, from, lazily] of text.matchAll(asking)) {
      const name = from ?? lazily!;
      asked.add(path.endsWith('.d.ts') && name === 'mdast' ? '@types/mdast' : name);
    }
  }
  const outside = [...asked].filter((name) => !name.startsWith('node:')).sort();
  expect(outside).toEqual(Object.keys(installed.manifest.dependencies).sort());
  expect(lockedForUsers().filter(([, { hasInstallScript }]) => hasInstallScript === true)).toEqual([]);
});

test('the installed program says its version and helps', () => {
  expect(rampbook('--version')).toEqual({ exitCode: 0, out: `${installed.manifest.version}\n`, err: '' });
  expect(rampbook('--help')).toMatchObject({ exitCode: 0, out: expect.stringContaining('start [options] <folder>') });
});

test('the installed program does the whole job from a folder of one’s own', () => {
  expect(rampbook('start', 'mine').exitCode).toBe(0);
  const importing = ['import', season.crosswalk, '--from', season.exports, '--store', 'mine/store', '--json'];
  const imported = rampbook(...importing);
  // Three forms and one station are sound; a day that is not and a station that is not set two forms aside.
  expect(JSON.parse(imported.out)).toMatchObject({ read: 6, kept: 4, set_aside: 2 });
  const notebook = 'mine/notebooks/small.md';
  const text = '# Small\n\n| figure | formula |\n|---|---|\n| all | count(inspections) |\n';
  writeFileSync(join(installed.folder, notebook), text);
  const reported = rampbook('report', notebook, '--store', 'mine/store', '--to', 'mine/reports', '--quiet');
  expect(reported).toMatchObject({ exitCode: 0, err: '' });
  expect(readFileSync(join(installed.folder, 'mine/reports/small.html'), 'utf8')).toContain('>Small</h1>');
});

test('a script reads a store into tables, computes a notebook and asks a statistic, with the types it was promised', () => {
  const script = `
import { openSeason, type Result } from 'rampbook';
import { type Interval, wilson } from 'rampbook/statistic';
const season = await openSeason('mine/store');
if (season.table === undefined) throw new Error(season.problems[0]!.code);
const text = '| figure | formula |\\n|---|---|\\n| all | count(inspections) |\\n';
const computed = await season.compute({ name: 'small.md', text, only: { watercraft_type: 'paddlecraft' } });
const all: Result | undefined = computed.figures?.get('all')?.result;
const limits: Interval = wilson(81, 263);
const unknown = await season.compute({ name: 'small.md', text, only: { watercraft: 'canoe' } });
const none = await openSeason('nowhere');
console.log(JSON.stringify({
  rows: season.table('inspections').groupby('outcome').count().orderby('outcome').objects(),
  kept: season.sum.files.map(({ kept }) => kept),
  all: all?.kind === 'number' ? all.value : null,
  limits: [limits.low?.toFixed(4), limits.high?.toFixed(4)],
  problems: [...unknown.problems, ...('problems' in none ? none.problems : [])].map(({ code }) => code),
}));
`;
  writeFileSync(join(installed.folder, 'script.mts'), script);
  const words = '--strict --exactOptionalPropertyTypes --skipLibCheck --module nodenext --target es2022 --ignoreConfig';
  const compiler = join(root, 'node_modules/typescript/bin/tsc');
  expect(runThere(installed, [compiler, ...words.split(' '), '--types', '', 'script.mts']).out).toBe('');
  const { out, err } = runThere(installed, ['script.mjs']);
  expect(err).toBe('');
  expect(JSON.parse(out)).toEqual({
    rows: [
      { outcome: 'cleared', count: 2 },
      { outcome: 'intercepted', count: 1 },
    ],
    kept: [1, 3],
    all: 1,
    // Newcombe RG (1998) Statistics in Medicine 17:857-872, table I, method 3.
    limits: ['0.2553', '0.3662'],
    problems: ['unknown-choice', 'no-such-store'],
  });
});
