import { expect, test } from 'vitest';
import { openBook } from '../../src/finding/book.js';
import { computeNotebook } from '../../src/notebook/compute-notebook.js';
import { readDocument } from '../../src/notebook/read-document.js';
import { elkPoint, inspection, smallRecords, smallSum } from '../finding/small-records.js';

function figures(inspections: readonly ReturnType<typeof inspection>[], formulas: readonly string[]) {
  const book = openBook(smallRecords({ stations: [elkPoint], inspections: [...inspections] }), smallSum(null));
  const rows = formulas.map((formula, at) => `| f${at} | ${formula} |`);
  const text = ['| figure | formula |', '|---|---|', ...rows].join('\n');
  const { notebook } = computeNotebook(readDocument('small.md', text), book, '');
  return formulas.map((_, at) => {
    const { result } = notebook.figures.get(`f${at}`)!;
    return result.kind === 'number' ? { value: result.value, why: result.why, limits: result.interval } : result;
  });
}

const wet = 'count(inspections where standing_water is "yes")';

test('what was recorded in none of the rows was not found to be none, in a count and in a share', () => {
  const nowhere = figures([inspection('a'), inspection('b')], [wet, `share(${wet}, count(inspections))`]);
  expect(nowhere).toMatchObject([
    { value: null, why: 'what the condition asks for is recorded in none of the rows', limits: null },
    { value: null, limits: null },
  ]);
});

test('where one row says it, and where there are no rows at all, a count of none is 0', () => {
  const one = figures([inspection('a', { standing_water: 'no' }), inspection('b')], [wet]);
  expect(one).toMatchObject([{ value: 0 }]);
  expect(
    figures([inspection('a')], [`count(inspections where station is missing and standing_water is "yes")`]),
  ).toMatchObject([{ value: 0 }]);
});
