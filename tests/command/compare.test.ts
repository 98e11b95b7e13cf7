import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { newFolder, type Ran, rampbook } from './run.js';
import { writeSmallSeason } from './small-season.js';

const notebook = (wage: number): string => `---
for: whoever counts on fingers
---

# Fingers

Of {inspected} craft {intercepted} carried mussels; an hour costs {cost}.

| input | value | unit    | source  |
|-------|-------|---------|---------|
| wage  | ${wage}    | dollars | payroll |

| figure      | formula                                           | shown as |
|-------------|---------------------------------------------------|----------|
| inspected   | count(inspections)                                | whole    |
| intercepted | count(inspections where outcome is "intercepted") | whole    |
| cost        | wage * 2                                          | dollars  |
`;

const folder = newFolder();
const file = join(folder, 'fingers.md');
const former = join(folder, 'former');
const now = join(folder, 'now');
let second: Ran;
let store: string;

function storeOf(forms?: (lines: string[]) => string[]): string {
  const season = writeSmallSeason(forms === undefined ? {} : { forms });
  const imported = rampbook(['import', season.crosswalk, '--from', season.exports, '--store', season.store, '--quiet']);
  expect(imported.exitCode, imported.err).toBe(0);
  return season.store;
}

beforeAll(() => {
  writeFileSync(file, notebook(20));
  store = storeOf();
  const more = storeOf((lines) => [...lines.slice(0, -1), '6,a,2025-06-03 09:00,motor,mussels,Secretmarker Six', '']);
  expect(rampbook(['report', file, '--store', store, '--to', former, '--quiet']).exitCode).toBe(0);
  expect(rampbook(['report', file, '--store', store, '--to', now, '--quiet']).exitCode).toBe(0);
  writeFileSync(file, notebook(25));
  writeFileSync(join(now, 'another.html'), '<!doctype html><title>Not ours</title>');
  second = rampbook(['report', file, '--store', more, '--to', now, '--quiet', '--compare-with', former]);
  expect(second.exitCode, second.err).toBe(0);
});

test('says of each figure what changed, by how much and why', () => {
  const { comparisons } = JSON.parse(rampbook(['compare', former, now, '--json']).out);
  expect(comparisons).toHaveLength(1);
  const [{ figures, files }] = comparisons;
  // Three sound forms and then four, one intercepted and then two; twice 20 dollars and then twice 25.
  expect(figures).toMatchObject([
    { name: 'inspected', before: { value: 3 }, after: { value: 4 }, by: 1, causes: ['data'] },
    { name: 'intercepted', before: { value: 1 }, after: { value: 2 }, by: 1, relative: 1, causes: ['data'] },
    {
      name: 'cost',
      before: { value: 40 },
      after: { value: 50 },
      by: 10,
      relative: 0.25,
      causes: ['input'],
      inputs: ['wage'],
    },
  ]);
  expect(files).toMatchObject({ added: [], removed: [], changed: ['forms.csv'] });
});

test('a page that replaces another says so, and the folder’s page and changes.html tell it', () => {
  expect(second.out).toContain('against the page that stood there: 3 figures differ');
  expect(readFileSync(join(now, 'changes.html'), 'utf8')).toContain('forms.csv changed: 4 rows kept, 3 before');
  const index = readFileSync(join(now, 'index.html'), 'utf8');
  expect(index).toContain('causes: data, input');
  expect(index).toContain('Of 4 craft 2 carried mussels; an hour costs $50.');
});

test('a page of another program in the folder is neither touched nor listed', () => {
  expect(readFileSync(join(now, 'another.html'), 'utf8')).toBe('<!doctype html><title>Not ours</title>');
  expect(readFileSync(join(now, 'index.html'), 'utf8')).not.toMatch(/another\.html|Not ours/);
});

test('a list of pages that somebody else wrote is not written over, and that is a problem', () => {
  const to = newFolder();
  writeFileSync(join(to, 'index.html'), '<title>Mine</title>');
  const { exitCode, err } = rampbook(['report', file, '--store', store, '--to', to, '--quiet']);
  expect([exitCode, readFileSync(join(to, 'index.html'), 'utf8')]).toEqual([1, '<title>Mine</title>']);
  expect(err).toContain('[name-taken]');
  expect(existsSync(join(to, 'fingers.html'))).toBe(true);
});

test('no page carries a private text', () => {
  for (const name of ['fingers', 'index', 'changes']) {
    expect(readFileSync(join(now, `${name}.html`), 'utf8')).not.toContain('Secretmarker');
  }
});

test('what is no page is a problem with its remedy, and a page is never written over by a comparison', () => {
  const page = join(now, 'fingers.html');
  const missing = rampbook(['compare', join(folder, 'nowhere.html'), page]);
  expect([missing.exitCode, missing.out]).toEqual([1, '']);
  expect(missing.err).toContain('[no-page]');
  const before = readFileSync(page, 'utf8');
  expect(rampbook(['compare', join(former, 'fingers.html'), page, '--to', page]).exitCode).toBe(1);
  expect(readFileSync(page, 'utf8')).toBe(before);
});
