import { expect, test } from 'vitest';
import { computeNotebook } from '../../src/notebook/compute-notebook.js';
import { needsOf } from '../../src/notebook/needs-of.js';
import { readDocument } from '../../src/notebook/read-document.js';
import { smallBook } from '../formula/small-book.js';

test('a sheet needs the selection that its rows are of, though a column of it has the same name and it stands below', () => {
  const text = [
    'Sheet by_station: each station of full.',
    '',
    '| column | formula |',
    '|---|---|',
    '| full | count() |',
    '| twice | 2 * full |',
    '',
    '| selection | rows |',
    '|---|---|',
    '| full | inspections where outcome is not "refused" |',
  ].join('\n');
  const workings = computeNotebook(readDocument('a.md', text), smallBook, '0');
  expect(workings.notebook.problems).toEqual([]);
  expect(workings.notebook.sheets.get('by_station')!.rows.length).toBeGreaterThan(0);
  // Its columns need no name from outside: `full` in the second is the first.
  expect(workings.sheets.get('by_station')!.needs).toEqual(['full']);
  expect(needsOf(workings).get('by_station')).toEqual(['full']);
});
