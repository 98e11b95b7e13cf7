import { expect, test } from 'vitest';
import { openBook } from '../../src/finding/book.js';
import { inputShown } from '../../src/notebook/input-shown.js';
import { elkPoint, inspection, smallRecords, smallSum } from '../finding/small-records.js';

const book = openBook(smallRecords({ stations: [elkPoint], inspections: [inspection('a')] }), smallSum(null));

test('an input that is the code of a station is shown by the station’s name, and keeps its code', () => {
  expect(inputShown({ kind: 'text', text: String(elkPoint.station) }, book)).toEqual({
    kind: 'text',
    text: elkPoint.name,
    code: elkPoint.station,
  });
});

test('any other text stays as it was written', () => {
  const other = { kind: 'text', text: 'full' } as const;
  expect(inputShown(other, book)).toBe(other);
});
