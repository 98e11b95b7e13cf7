import { beforeEach, expect, test, vi } from 'vitest';
import { computeNotebook } from '../../src/notebook/compute-notebook.js';
import { Memory } from '../../src/notebook/memory.js';
import { readDocument } from '../../src/notebook/read-document.js';
import type { NotebookWorkings } from '../../src/notebook/workings.js';
import type { Book } from '../../src/record/book.js';
import { book, numbers, table, texts } from '../formula/small-book.js';

/** The formulas that were evaluated, one a call: counted at the evaluator itself, so that no bookkeeping can hide one. */
const evaluated = vi.hoisted((): string[] => []);
vi.mock('../../src/formula/evaluate.js', async (original) => {
  const real = await original<typeof import('../../src/formula/evaluate.js')>();
  return {
    ...real,
    evaluate: ((formula, environment) => {
      evaluated.push(formula.text);
      return real.evaluate(formula, environment);
    }) satisfies typeof real.evaluate,
  };
});

const lines = [
  '# Small',
  '',
  '| input | value | unit |',
  '|---|---|---|',
  '| wage | 20 | dollars an hour |',
  '| target | 5 | inspections |',
  '',
  '| selection | rows |',
  '|---|---|',
  '| full | inspections where extent is "full" |',
  '',
  '| figure | formula |',
  '|---|---|',
  '| seen | count(full) |',
  '| doubled | seen * 2 |',
  '| over | seen - target |',
  '| spent | sum(amount of spending) |',
  '| hours | spent / wage |',
  '',
  'Sheet by_station: each station of full.',
  '',
  '| column | formula |',
  '|---|---|',
  '| looked | count() |',
  '| twice | looked * 2 |',
  '| cost | spent / looked |',
];

function smallBook(amounts: readonly number[] = [300, 100], extents = ['full', 'full', 'paper check', 'full']): Book {
  const inspections = table(
    'inspections',
    'inspections',
    [texts('station', ['a', 'b', 'a', 'b']), texts('extent', extents)],
    [0, 1, 0, 1],
  );
  return book([inspections, table('spending', 'entries', [numbers('amount', 'dollars', amounts)], null)], [0, 1]);
}

let memory: Memory;
let records: Book;
const fingerprints = new Map([
  ['inspections', 'i1'],
  ['spending', 's1'],
]);

function compute(text: readonly string[], of = records, prints = fingerprints): NotebookWorkings {
  evaluated.length = 0;
  return computeNotebook(readDocument('small.md', text.join('\n')), of, 'print', memory, prints);
}

const changed = (from: string, to: string): string[] => lines.map((line) => line.replace(from, to));

/** The computation must give what one without a memory gives. */
function expectAsIfNew({ notebook }: NotebookWorkings, text: readonly string[], of = records): void {
  const fresh = computeNotebook(readDocument('small.md', text.join('\n')), of, 'print');
  expect(JSON.stringify([...notebook.figures, ...notebook.sheets, ...notebook.selections])).toBe(
    JSON.stringify([...fresh.notebook.figures, ...fresh.notebook.sheets, ...fresh.notebook.selections]),
  );
  expect(notebook.problems).toEqual(fresh.notebook.problems);
}

beforeEach(() => {
  memory = new Memory();
  records = smallBook();
  const { notebook } = compute(lines);
  expect(notebook.problems).toEqual([]);
  // One selection, five figures, the sheet's rows, and three columns for each of two stations.
  expect(evaluated).toHaveLength(1 + 5 + 1 + 3 * 2);
});

test('the same document again computes nothing', () => {
  compute(lines);
  expect(evaluated).toEqual([]);
});

test('a changed input reaches what stands on it and nothing else', () => {
  const text = changed('| target | 5 |', '| target | 4 |');
  const found = compute(text);
  expect(evaluated).toEqual(['seen - target']);
  expectAsIfNew(found, text);
});

test('a changed formula is computed with all that stands on it', () => {
  const text = changed('seen * 2', 'seen * 3');
  compute(text);
  expect(evaluated).toEqual(['seen * 3']);
  const further = text.map((line) => line.replace('sum(amount of spending)', 'sum(amount of spending) * 2'));
  const found = compute(further);
  expect([...evaluated].sort()).toEqual([
    'spent / looked',
    'spent / looked',
    'spent / wage',
    'sum(amount of spending) * 2',
  ]);
  expectAsIfNew(found, further);
});

test('a changed column of a sheet leaves its other columns', () => {
  const text = changed('looked * 2', 'looked * 4');
  const found = compute(text);
  expect(evaluated).toEqual(['looked * 4', 'looked * 4']);
  expectAsIfNew(found, text);
});

test('prose, order, headings, names of formats and sources compute nothing', () => {
  const text = ['# Another title', 'A sentence.', ...lines.slice(1)].map((line) =>
    line
      .replace('| figure | formula |', '| figure | formula | shown as |')
      .replace('| seen | count(full) |', '| seen | count(full) | whole |')
      .replace('each station of full.', 'each station of full, highest looked first.'),
  );
  text[text.indexOf('| figure | formula | shown as |') + 1] = '|---|---|---|';
  const found = compute(text);
  expect(found.notebook.problems).toEqual([]);
  expect(evaluated).toEqual([]);
  expectAsIfNew(found, text);
});

test('a changed selection is computed with all that counts it, and not what counts other records', () => {
  compute(changed('where extent is "full"', 'where extent is "paper check"'));
  expect(evaluated).not.toContain('sum(amount of spending)');
  expect(evaluated).not.toContain('spent / wage');
  expect(evaluated).toContain('seen - target');
  expect(evaluated).toContain('looked * 2');
});

test('a changed record of one table leaves what stands on other tables', () => {
  const more = smallBook([300, 150]);
  const found = compute(lines, more, new Map([...fingerprints, ['spending', 's2']]));
  expect([...evaluated].sort()).toEqual([
    'spent / looked',
    'spent / looked',
    'spent / wage',
    'sum(amount of spending)',
  ]);
  expectAsIfNew(found, lines, more);
  const others = smallBook([300, 150], ['full', 'full', 'full', 'full']);
  const again = compute(lines, others, new Map([...fingerprints, ['spending', 's2'], ['inspections', 'i2']]));
  expect(evaluated).not.toContain('sum(amount of spending)');
  expect(evaluated).toContain('count(full)');
  expectAsIfNew(again, lines, others);
});

test('without the fingerprints of tables another import is another book', () => {
  const { sum, ...rest } = smallBook([300, 150]);
  const other = { ...rest, sum: { ...sum, fingerprint: 'another' } };
  compute(lines, other, new Map());
  expect(evaluated).toContain('sum(amount of spending)');
  expect(evaluated).toContain('count(full)');
});

test('another seed or number of resamples computes again', () => {
  compute(['---', 'resamples: 500', '---', ...lines]);
  expect(evaluated).toContain('count(full)');
});

test('a mistake is told each time, and mending it computes only what it stood in', () => {
  const wrong = changed('seen - target', 'seen - targt');
  expect(compute(wrong).notebook.problems.map(({ code }) => code)).toEqual(['unknown-name']);
  expect(compute(wrong).notebook.problems.map(({ code }) => code)).toEqual(['unknown-name']);
  expect(evaluated).toEqual([]);
  const mended = compute(lines);
  expect(evaluated).toEqual([]);
  expectAsIfNew(mended, lines);
});

test('a line more above moves every problem and figure to its own line', () => {
  const wrong = changed('seen - target', 'seen - targt');
  compute(wrong);
  const { notebook } = compute(['', ...wrong]);
  const line = wrong.findIndex((text) => text.includes('targt')) + 2;
  expect(notebook.problems.map(({ place }) => place.line)).toEqual([line]);
  expect(notebook.figures.get('over')!.line).toBe(line);
});
