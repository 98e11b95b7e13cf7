import { execFileSync } from 'node:child_process';
import { existsSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { bareCode, folderLine, readSources, root } from './sources.js';

const sources = readSources();
const tracked = execFileSync('git', ['ls-files', '-co', '--exclude-standard'], { cwd: root, encoding: 'utf8' })
  .split('\n')
  .filter((path) => path !== '' && existsSync(join(root, path)));

test('every source folder is in the line', () => {
  expect([...new Set(sources.map(({ folder }) => folder))].filter((folder) => !folderLine.includes(folder))).toEqual(
    [],
  );
});

test('imports point left only', () => {
  const wrong = sources.flatMap(({ path, folder, imports }) =>
    imports
      .filter((target) => folderLine.indexOf(target.split('/')[0]!) > folderLine.indexOf(folder))
      .map((target) => `${path} imports ${target}`),
  );
  expect(wrong).toEqual([]);
});

test('every import of our own names a file', () => {
  const known = new Set(sources.map(({ path }) => path));
  expect(
    sources.flatMap(({ path, imports }) => imports.filter((to) => !known.has(to)).map((to) => `${path}: ${to}`)),
  ).toEqual([]);
});

test('statistic stands alone, and formula needs nothing but the page', () => {
  const alone = sources.filter(({ folder }) => folder === 'statistic');
  expect(alone.flatMap(({ imports }) => imports.filter((target) => !target.startsWith('statistic/')))).toEqual([]);
  expect(alone.flatMap(({ packages }) => packages)).toEqual([]);
  const inPage = sources.filter(({ folder }) => folder === 'formula');
  expect(inPage.flatMap(({ packages }) => packages.filter((name) => name.startsWith('node:')))).toEqual([]);
});

test('no file imports itself by any way round', () => {
  const importsOf = new Map(sources.map(({ path, text, imports }) => [path, typeOnly(path, text, imports)]));
  const done = new Set<string>();
  const loops: string[] = [];
  const visit = (path: string, way: readonly string[]): void => {
    if (way.includes(path)) {
      loops.push([...way.slice(way.indexOf(path)), path].join(' → '));
      return;
    }
    if (done.has(path)) return;
    for (const target of importsOf.get(path) ?? []) visit(target, [...way, path]);
    done.add(path);
  };
  for (const { path } of sources) visit(path, []);
  expect(loops).toEqual([]);
});

/** The imports that remain when the program runs: `import type` is gone by then. */
function typeOnly(path: string, text: string, imports: readonly string[]): readonly string[] {
  return imports.filter((target) => {
    const file = target.split('/').at(-1)!.replace(/\.ts$/, '.js').replaceAll('.', '\\.');
    return (
      new RegExp(`(?:^|\\n)\\s*(?:import|export)\\s+(?!type\\b)[^;]*?from\\s+'[^']*${file}'`).test(text) && path !== ''
    );
  });
}

test('clock, chance, terminal and disk are touched only where allowed', () => {
  const disk = /node:(fs|child_process|os|net|http|https|worker_threads)/;
  const diskFolders = ['intake', 'store', 'command'];
  const clock =
    /\bDate\.now\b|\bnew Date\(\s*\)|\bperformance\.now\b|\bMath\.random\b|\brandomBytes\b|\brandomUUID\b|\bprocess\./;
  const wrong = sources.flatMap(({ path, folder, text, packages }) => [
    ...(diskFolders.includes(folder)
      ? []
      : packages.filter((name) => disk.test(name)).map((name) => `${path}: ${name}`)),
    ...(folder === 'command' ? [] : (bareCode(text).match(clock) ?? []).map((use) => `${path}: ${use}`)),
  ]);
  expect(wrong).toEqual([]);
});

test('no text is ever run as code', () => {
  const wrong = sources.filter(({ text }) => /\beval\s*\(|\bnew Function\b|[^.\w]Function\s*\(/.test(bareCode(text)));
  expect(wrong.map(({ path }) => path)).toEqual([]);
});

test('a file carries the name of its one concept', () => {
  const names = sources.map(({ path }) => path.split('/').at(-1)!.replace(/\.ts$/, ''));
  expect(names.filter((name) => !/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/.test(name))).toEqual([]);
  expect(names.filter((name) => /^(util|utils|helper|helpers|common|misc|shared|index|types)$/.test(name))).toEqual([]);
});

test('a file over 250 lines explains itself in its first comment', () => {
  const long = sources.filter(({ text }) => text.split('\n').length > 250);
  expect(
    long
      .filter(({ text }) => !/long because/i.test(text))
      .map(({ path, text }) => `${path}: ${text.split('\n').length}`),
  ).toEqual([]);
});

test('the median file is under 80 lines', () => {
  const lengths = sources.map(({ text }) => text.split('\n').length).sort((a, b) => a - b);
  expect(lengths[Math.floor(lengths.length / 2)]).toBeLessThan(80);
});

test('every export of a folder carries a doc comment', () => {
  const exported = /(?:^|\n)(?!export \{|export \*)export (?:async )?(?:function|const|interface|type|class) (\w+)/g;
  const bare = sources.flatMap(({ path, text }) =>
    [...text.matchAll(exported)]
      .filter((match) => !/\*\/\s*$/.test(text.slice(0, match.index)))
      .map((match) => `${path}: ${match[1]}`),
  );
  expect(bare).toEqual([]);
});

test('nothing else stands at the top', () => {
  const allowed = new Set([
    'README.md',
    'DEVELOPERS.md',
    'LICENSE',
    'package.json',
    'package-lock.json',
    'tsconfig.json',
    'notebooks',
    'datasets',
    'src',
    'bin',
    'tests',
    'reports',
  ]);
  const top = new Set(tracked.map((path) => path.split('/')[0]!).filter((name) => !name.startsWith('.')));
  expect([...top].filter((name) => !allowed.has(name))).toEqual([]);
});

test('no committed file is over 3 MB', () => {
  expect(tracked.filter((path) => statSync(join(root, path)).size > 3_000_000)).toEqual([]);
});

test('no figure stands on the engine’s own powers, whose last digits differ between engines; squares are products', () => {
  const folders = ['statistic', 'finding', 'formula'];
  const wrong = sources
    .filter(({ folder }) => folders.includes(folder))
    .filter(({ text }) => /\*\*(?! 2\b)|\bMath\.pow\b/.test(bareCode(text)));
  expect(wrong.map(({ path }) => path)).toEqual([]);
});
