import { expect, test } from 'vitest';
import { absentSeasons } from '../../src/command/absent-season.js';
import { restrictedBook } from '../../src/finding/book/restricted-book.js';
import { openBook } from '../../src/finding/book.js';
import { number } from '../chart/small-sheet.js';
import { elkPoint, inspection, smallRecords, smallSum } from '../finding/small-records.js';
import { sampleNotebook } from '../report/sample-notebook.js';

test('a choice that leaves nothing of the season a notebook asks about is told, with the seasons that are left', () => {
  const inspections = ['2024', '2025'].map((year) => inspection(year, { started_at: `${year}-06-01T18:00Z` }));
  const book = openBook(smallRecords({ stations: [elkPoint], inspections }), smallSum(null));
  const input = { name: 'this_season', value: number(2025), unit: 'year', source: '', line: 9 };
  const notebook = { ...sampleNotebook, inputs: new Map([['this_season', input]]) };
  const told = (season: number) =>
    absentSeasons(notebook, restrictedBook(book, new Map([['season', season]]))).map(({ wanted, remedy }) => [
      wanted,
      remedy,
    ]);
  expect(told(2025)).toEqual([]);
  expect(told(2024)).toEqual([
    ['a season of the records counted: 2024', expect.stringContaining('give --with this_season=2024')],
  ]);
});
