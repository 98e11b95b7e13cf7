import { expect, test } from 'vitest';
import { inspectionRows } from '../../../src/finding/book/inspection-rows.js';
import { restrictedBook } from '../../../src/finding/book/restricted-book.js';
import { openBook } from '../../../src/finding/book.js';
import { elkPoint, inspection, look, smallRecords, smallSum } from '../small-records.js';

test('second looks are chosen with the inspection that they check, whoever made them', () => {
  const whole = openBook(
    smallRecords({
      stations: [elkPoint],
      inspections: [inspection('1', { inspector: 'one' }), inspection('2', { inspector: 'other' })],
      rechecks: [
        look('1', 'transom', 'clean', 'none', { inspector: 'other' }),
        look('2', 'transom', 'clean', 'none', { inspector: 'one' }),
      ],
    }),
    smallSum(null),
  );
  const chosen = restrictedBook(whole, new Map([['inspector', 'one']]));
  const rechecks = chosen.tables.get('rechecks')!;
  expect([chosen.tables.get('inspections')!.rowCount, rechecks.rowCount]).toEqual([1, 1]);
  expect([...inspectionRows(chosen, rechecks, Uint32Array.of(0))]).toEqual([0]);
});
