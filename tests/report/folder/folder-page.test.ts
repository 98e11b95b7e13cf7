import { expect, test } from 'vitest';
import { changesSummary } from '../../../src/report/comparison/changes-summary.js';
import { comparePages } from '../../../src/report/comparison/compare-pages.js';
import { folderPage, listsFolder } from '../../../src/report/folder/folder-page.js';
import { unlikeNeighbours } from '../../../src/report/folder/neighbours.js';
import { earlier, withFigure } from '../comparison/results-to-compare.js';

const page = (name: string, more: Partial<typeof earlier> = {}) => ({
  file: `${name}.html`,
  results: { ...earlier, name, title: `The ${name}`, ...more },
});
const three = [page('one'), page('two'), page('three')];
const none = { changes: null, beside: [] };
const marked = (html: string): number => html.match(/Made of other records than its neighbours/g)?.length ?? 0;

test('each page stands there with its link, headline, whom it is for, date and fingerprints', () => {
  const html = folderPage({ pages: three, ...none });
  for (const said of ['<a href="two.html">The two</a>', 'Of 100, 4 were.', 'everybody', 'Nov 30, 2024']) {
    expect(html).toContain(said);
  }
  for (const letter of ['a', 'b', 'c']) expect(html).toContain(`<code>${letter.repeat(12)}</code>`);
  expect(folderPage({ pages: three, ...none })).toBe(html);
  expect(listsFolder(html)).toBe(true);
});

test('a page of other records or of another program than its neighbours is marked, and they are not', () => {
  expect(marked(folderPage({ pages: three, ...none }))).toBe(0);
  expect(marked(folderPage({ pages: [...three, page('odd', { records: '0'.repeat(64) })], ...none }))).toBe(1);
  const program = { version: '0.1.0', fingerprint: '0'.repeat(64) };
  expect(folderPage({ pages: [...three, page('odd', { program })], ...none })).toContain('2 states of the program');
});

test('where no group is the largest none is the rule, and every page is marked', () => {
  expect([...unlikeNeighbours(['a1', 'a2', 'b1'], ([group]) => group!)]).toEqual(['b1']);
  expect([...unlikeNeighbours(['a1', 'b1'], ([group]) => group!)]).toEqual(['a1', 'b1']);
  expect([...unlikeNeighbours(['a1', 'a2'], ([group]) => group!)]).toEqual([]);
});

test('what changed is told of the rendering that was compared, and of no other', () => {
  const later = withFigure('rate', { value: 0.2 }, { ...earlier, records: 'd'.repeat(64) });
  const changes = changesSummary([comparePages(earlier, later)]);
  const said = '1 figure differs, 1 beyond the former interval; 0 sheets differ; cause: data';
  expect(folderPage({ pages: [{ file: 'season.html', results: later }], changes, beside: [] })).toContain(said);
  const since = folderPage({ pages: [{ file: 'season.html', results: earlier }], changes, beside: [] });
  expect(since).not.toContain(said);
  expect(since).toContain('changes.html tells of another rendering of this page');
});

test('a file name or title cannot leave its place', () => {
  const html = folderPage({ pages: [page('javascript:alert(1)//', { title: '<img src=x>' })], ...none });
  expect(html).toContain('href="javascript%3Aalert(1)%2F%2F.html"');
  expect(html).not.toContain('<img');
});
