import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { greedyCover } from '../../src/statistic/cover.js';
import { type CoveredKind, exactCover } from '../../src/statistic/exact-cover.js';

const sets = fc.array(fc.array(fc.integer({ min: 1, max: 12 }), { maxLength: 6 }), { minLength: 1, maxLength: 7 });

/** The most that k of some sets cover, by trying all. */
function bestByTrying(
  list: readonly (readonly number[])[],
  k: number,
  from = 0,
  taken: readonly number[] = [],
): number {
  const here = new Set(taken).size;
  if (k === 0 || from === list.length) return here;
  const rest = list.slice(from).map((set, at) => bestByTrying(list, k - 1, from + at + 1, [...taken, ...set]));
  return Math.max(here, ...rest);
}

function kindsOf(list: readonly (readonly number[])[]): CoveredKind[] {
  return [...new Set(list.flat())].map((element) => ({
    sets: list.flatMap((set, at) => (set.includes(element) ? [at] : [])),
    count: 1,
  }));
}

describe('greedyCover', () => {
  it('reaches its bound of the best cover: Nemhauser, Wolsey & Fisher 1978', () => {
    fc.assert(
      fc.property(sets, fc.integer({ min: 1, max: 4 }), (list, k) => {
        const { covered, bound } = greedyCover(list, k);
        const best = bestByTrying(list, k);
        expect(covered.at(-1) ?? 0).toBeGreaterThanOrEqual(bound * best - 1e-9);
        expect(covered.at(-1) ?? 0).toBeLessThanOrEqual(best);
      }),
    );
  });

  it('a tie goes to the set given first, and nothing is picked that adds nothing', () => {
    expect(greedyCover([[1, 2], [3, 4], [1, 3], []], 4)).toMatchObject({ picks: [0, 1], covered: [2, 4] });
  });
});

describe('exactCover', () => {
  it('is the most that any k sets cover, with the sets that do', () => {
    fc.assert(
      fc.property(sets, fc.integer({ min: 1, max: 4 }), (list, k) => {
        const found = exactCover(kindsOf(list), list.length, k);
        expect(found?.covered).toBe(bestByTrying(list, k));
        expect(new Set(found?.picks.flatMap((pick) => list[pick]!)).size).toBe(found?.covered);
        expect(found?.picks.length).toBeLessThanOrEqual(k);
      }),
    );
  });

  it('declines when there would be too many branches', () => {
    // Every two of thirty sets share one element of their own: no bound is sharp.
    const kinds = Array.from({ length: 30 }, (_, one) =>
      Array.from({ length: one }, (_unused, other) => ({ sets: [one, other], count: 1 })),
    ).flat();
    expect(exactCover(kinds, 30, 12)).toBeNull();
  });
});
