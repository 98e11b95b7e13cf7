import { toHtml } from 'hast-util-to-html';
import { expect, test } from 'vitest';
import { openBook } from '../../src/finding/book.js';
import { computeNotebook } from '../../src/notebook/compute-notebook.js';
import { readDocument } from '../../src/notebook/read-document.js';
import { figureTable } from '../../src/report/figure-table.js';
import { elkPoint, inspection, smallRecords, smallSum } from '../finding/small-records.js';

/** The figures of a notebook over inspections of which so many were wet, so many dry, and of the others nobody said. */
function tableOf(wet: number, dry: number, unsaid: number): string {
  const of = (count: number, name: string, more: Readonly<Record<string, string>>) =>
    Array.from({ length: count }, (_, at) => inspection(`${name}${at}`, more));
  const inspections = [
    ...of(wet, 'w', { standing_water: 'yes' }),
    ...of(dry, 'd', { standing_water: 'no' }),
    ...of(unsaid, 'u', {}),
  ];
  const book = openBook(smallRecords({ stations: [elkPoint], inspections }), smallSum(null));
  const formula = 'count(inspections where standing_water is "yes")';
  const text = ['| figure | formula |', '|---|---|', `| wet | ${formula} |`].join('\n');
  const { notebook } = computeNotebook(readDocument('small.md', text), book, '');
  return toHtml(figureTable([...notebook.figures.values()], new Map()));
}

test('a count of none beside records that do not say is not called counted in full', () => {
  expect(tableOf(0, 1, 20)).toContain('far more rows are left open');
  expect(tableOf(0, 1, 20)).not.toContain('counted in full');
});

test('a few records that do not say, beside many that were counted, change nothing', () => {
  expect(tableOf(9, 1, 3)).toContain('counted in full');
  expect(tableOf(9, 1, 3)).not.toContain('left open');
});
