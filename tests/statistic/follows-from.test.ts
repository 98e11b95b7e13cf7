import { expect, test } from 'vitest';
import { followsFrom as followsFromMixed, mixedTotals } from '../../src/statistic/disclosure/follows-from.js';

function followsFrom(published: Uint32Array[], hidden: Uint32Array[], parts: number) {
  const mixed = mixedTotals([...published, ...hidden], parts);
  return followsFromMixed(mixed.slice(0, published.length), mixed.slice(published.length));
}

const of = (...parts: number[]): Uint32Array => Uint32Array.from(parts);

// The two-way table of Cox (1980), J Amer Statist Assoc 75:377-385, in words: a cell follows from its row's total once the
// others of the row are shown. From memory; the arithmetic below is checked by hand.
test('a hidden cell follows from its total and the cells beside it, and two hidden cells do not', () => {
  const [total, one, two, three] = [of(0, 1, 2), of(0), of(1), of(2)];
  expect(followsFrom([total, one, two], [three], 3)).toEqual([[0, 1, 2]]);
  expect(followsFrom([total, one], [two, three], 3)).toEqual([null, null]);
});

test('a hidden cell of a two-way table follows round a corner', () => {
  // Rows 012, 345; columns 03, 14, 25; all margins shown, and cells 1, 2 and 4 hidden: 0, 3 and 5 tell 2, and so 1 and 4.
  const margins = [of(0, 1, 2), of(3, 4, 5), of(0, 3), of(1, 4), of(2, 5)];
  expect(followsFrom([...margins, of(5)], [of(2)], 6)[0]).not.toBeNull();
  expect(followsFrom(margins, [of(2), of(0)], 6)).toEqual([null, null]);
});

test('a difference of two shown totals follows from them, and nothing follows from nothing', () => {
  expect(followsFrom([of(0, 1, 2, 3), of(0, 1)], [of(2, 3), of(2)], 4)).toEqual([[0, 1], null]);
  expect(followsFrom([], [of(0)], 1)).toEqual([null]);
});
