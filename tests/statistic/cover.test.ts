import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { greedyCover, largestCover } from '../../src/statistic/cover.js';

const sets = fc.array(fc.array(fc.integer({ min: 1, max: 12 }), { maxLength: 6 }), { minLength: 1, maxLength: 7 });

describe('greedyCover', () => {
  it('reaches its bound of the best cover: Nemhauser, Wolsey & Fisher 1978', () => {
    fc.assert(
      fc.property(sets, fc.integer({ min: 1, max: 4 }), (list, k) => {
        const { covered, bound } = greedyCover(list, k);
        const best = largestCover(list, k) ?? 0;
        expect(covered.at(-1) ?? 0).toBeGreaterThanOrEqual(bound * best - 1e-9);
        expect(covered.at(-1) ?? 0).toBeLessThanOrEqual(best);
      }),
    );
  });

  it('a tie goes to the set given first, and nothing is picked that adds nothing', () => {
    expect(greedyCover([[1, 2], [3, 4], [1, 3], []], 4)).toMatchObject({ picks: [0, 1], covered: [2, 4] });
  });
});

describe('largestCover', () => {
  it('is as large as the union once every set may be picked', () => {
    fc.assert(
      fc.property(sets, (list) => {
        expect(largestCover(list, list.length)).toBe(new Set(list.flat()).size);
      }),
    );
  });

  it('declines when there would be too many tries', () => {
    const many = Array.from({ length: 60 }, (_, i) => [i]);
    expect(largestCover(many, 20)).toBeNull();
  });
});
