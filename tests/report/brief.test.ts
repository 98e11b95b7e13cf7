import { expect, test } from 'vitest';
import { openBook } from '../../src/finding/book.js';
import { computeNotebook } from '../../src/notebook/compute-notebook.js';
import { readDocument } from '../../src/notebook/read-document.js';
import { renderPage } from '../../src/report/page.js';
import { elkPoint, inspection, smallRecords, smallSum } from '../finding/small-records.js';

const book = openBook(smallRecords({ stations: [elkPoint], inspections: [inspection('a')] }), smallSum(null));
const program = { version: '0', fingerprint: '0' };

function page(head: string, body: string): string {
  const text = `---\n${head}\n---\n\n# A brief\n\n${body}\n`;
  const { notebook, settings } = computeNotebook(readDocument('brief.md', text), book, 'f'.repeat(64));
  const layout = settings.layout === 'brief' ? { layout: settings.layout } : {};
  return renderPage(notebook, { sum: book.sum, program, date: '1 June 2025', ...layout }).html;
}

const body =
  'Above the break.\n\n| figure | formula |\n|---|---|\n| seen | count(inspections) |\n\n***\n\nBelow the break.';

/** What stands within the sheet, and what below it. */
function halves(html: string): readonly [string, string] {
  const [, sheet = '', workings = ''] =
    /<section class="brief">(.*)<\/section><div class="workings">(.*)<\/div>/s.exec(html) ?? [];
  return [sheet, workings];
}

test('what stands before the first thematic break is the sheet, all else its workings', () => {
  const [sheet, workings] = halves(page('layout: brief', body));
  expect(sheet).toContain('<h1>A brief</h1>');
  expect(sheet).toContain('Above the break.');
  expect(sheet).toContain('id="figures-seen"');
  expect(sheet).not.toContain('Below the break.');
  expect(workings).toContain('Below the break.');
  for (const id of ['cautions', 'definitions', 'provenance']) expect(workings).toContain(`id="${id}"`);
});

test('the sheet says up to when the records tell and which notebook it is', () => {
  expect(halves(page('layout: brief', body))[0]).toContain('Records up to 1 June 2025; notebook ffffffffffff.');
});

test('without a break everything of the notebook is on the sheet', () => {
  const [sheet] = halves(page('layout: brief', 'One.\n\nTwo.'));
  expect(sheet).toContain('Two.');
});

test('paper carries the sheet alone, and a page without the setting carries none of it', () => {
  expect(page('layout: brief', body)).toMatch(/@media print\{\s*\.workings\{display:none\}/);
  const plain = page('layout: page', body);
  expect(plain).not.toContain('workings');
  expect(plain).toContain('Below the break.');
});

test('a layout that there is not is told', () => {
  const { problems } = readDocument('brief.md', '---\nlayout: poster\n---\n\n# A brief\n');
  expect(problems).toMatchObject([{ code: 'bad-setting', seen: 'poster', wanted: 'page or brief for "layout"' }]);
});
