import fc from 'fast-check';
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
  expect(followsFrom([...margins, of(5)], [of(2)], 6)[0]).toEqual([0, 1, 2, 3, 5]);
  expect(followsFrom(margins, [of(2), of(0)], 6)).toEqual([null, null]);
  // By hand, the last margin following from those before it: 2 is 012 + 345 − 03 − 14 − 5, and 0 is 03 + 14 + 5 − 345 − 1.
  expect(followsFrom([...margins, of(5), of(1)], [of(0)], 6)).toEqual([[1, 2, 3, 5, 6]]);
});

test('a difference of two shown totals follows from them, and nothing follows from nothing', () => {
  expect(followsFrom([of(0, 1, 2, 3), of(0, 1)], [of(2, 3), of(2)], 4)).toEqual([[0, 1], null]);
  expect(followsFrom([], [of(0)], 1)).toEqual([null]);
});

/** The rank of totals as rows of noughts and ones, by elimination without fractions: Bareiss EH (1968) Math Comp 22:565-578. */
function rankOf(totals: readonly Uint32Array[], parts: number): number {
  const rows = totals.map((total) => Array.from({ length: parts }, (_, part) => BigInt(total.includes(part))));
  let rank = 0;
  let before = 1n;
  for (let column = 0; column < parts; column += 1) {
    const pivot = rows.findIndex((row, at) => at >= rank && row[column] !== 0n);
    if (pivot < 0) continue;
    [rows[rank], rows[pivot]] = [rows[pivot]!, rows[rank]!];
    const lead = rows[rank]!;
    for (const row of rows.slice(rank + 1)) {
      const factor = row[column]!;
      row.forEach((value, at) => {
        row[at] = (lead[column]! * value - factor * lead[at]!) / before;
      });
    }
    before = lead[column]!;
    rank += 1;
  }
  return rank;
}

test('what follows is what elimination in whole numbers finds, from just the totals that it needs', () => {
  const total = fc.uniqueArray(fc.nat({ max: 6 }), { minLength: 1, maxLength: 5 }).map((parts) => of(...parts));
  fc.assert(
    fc.property(fc.array(total, { maxLength: 8 }), total, (published, hidden) => {
      const rank = (totals: readonly Uint32Array[]) => rankOf(totals, 7);
      const [from] = followsFrom(published, [hidden], 7);
      if (from === null || from === undefined) {
        expect(rank([...published, hidden])).toBe(rank(published) + 1);
        return;
      }
      const used = from.map((place) => published[place]!);
      expect(rank([...used, hidden])).toBe(used.length);
      for (const left of used) expect(rank([...used.filter((one) => one !== left), hidden])).toBe(used.length);
      expect(from).toEqual([...from].sort((a, b) => a - b));
    }),
    { numRuns: 300 },
  );
});

test('totals that were given are left as they were, so that they can be asked again', () => {
  const mixed = mixedTotals([of(0, 1), of(0), of(1)], 2);
  const once = followsFromMixed(mixed.slice(0, 2), mixed.slice(2));
  expect(followsFromMixed(mixed.slice(0, 2), mixed.slice(2))).toEqual(once);
  expect(mixed).toEqual(mixedTotals([of(0, 1), of(0), of(1)], 2));
});
