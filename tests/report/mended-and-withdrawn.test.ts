import { toHtml } from 'hast-util-to-html';
import { expect, test } from 'vitest';
import type { FileSum } from '../../src/record/file-sum.js';
import { mendedAndWithdrawn } from '../../src/report/mended-and-withdrawn.js';

const file: FileSum = {
  file: 'a.csv',
  fingerprint: '',
  crosswalk: 'lakes',
  table: 'checks',
  read: 9,
  kept: 9,
  setAside: 0,
  folded: 0,
  problems: {},
  notes: {},
};
const sum = { files: [file], definitionChanges: [], asOf: null, fingerprint: '' };

test('a page says how many rows were mended and which seasons are withdrawn, and nothing where none are', () => {
  expect(mendedAndWithdrawn(sum)).toEqual([]);
  const withdrawn = { seasons: [2023, 2024], files: [{ file: 'b.csv', read: 1200 }] };
  const page = mendedAndWithdrawn({
    ...sum,
    files: [
      { ...file, mended: 2 },
      { ...file, mended: 3 },
    ],
    withdrawn,
  })
    .map((element) => toHtml(element))
    .join('');
  expect(page).toContain('5 of the rows kept stand as somebody corrected them');
  expect(page).toContain('2023, 2024; one file with 1,200 rows left out');
});

test('a single row that was mended or withdrawn is told as one', () => {
  const withdrawn = { seasons: [2023], files: [{ file: 'b.csv', read: 1 }] };
  const page = mendedAndWithdrawn({ ...sum, files: [{ ...file, mended: 1 }], withdrawn })
    .map((element) => toHtml(element))
    .join('');
  expect(page).toContain('One of the rows kept stands as somebody corrected it');
  expect(page).toContain('2023; one file with one row left out');
});
