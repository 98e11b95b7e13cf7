import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { loadSolver } from '../../src/command/load-solver.js';
import { shiftProgram } from '../../src/finding/staffing/solved-plan.js';
import type { ProgramSolver } from '../../src/record/program-solver.js';
import { bestShifts } from '../../src/statistic/allocation/best-shifts.js';
import { dividedShifts } from '../../src/statistic/allocation/divided-shifts.js';
import { choiceOf, type ShiftBlock, type ShiftLimits } from '../../src/statistic/allocation/shift-choice.js';

let solver: ProgramSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

/** Every choice there is, one by one. */
function bruteForce(blocks: readonly ShiftBlock[], limits: ShiftLimits): number | null {
  let best: number | null = null;
  const visit = (taken: readonly number[]): void => {
    if (taken.length < blocks.length) {
      for (let shifts = 0; shifts <= blocks[taken.length]!.gains.length; shifts++) visit([...taken, shifts]);
      return;
    }
    const { spent, gain } = choiceOf(blocks, taken);
    const kept = limits.groups.every(({ least, most }, group) => {
      const own = taken.reduce((sum, n, at) => sum + (blocks[at]!.group === group ? n * blocks[at]!.size : 0), 0);
      return own >= least && own <= most;
    });
    if (spent <= limits.most && kept && (best === null || gain > best)) best = gain;
  };
  visit([]);
  return best;
}

const falling = (first: number, by: number, count: number) =>
  Array.from({ length: count }, (_, at) => first * by ** at);
const block = fc
  .record({
    group: fc.nat({ max: 2 }),
    size: fc.integer({ min: 1, max: 9 }),
    first: fc.double({ min: 0.01, max: 5, noNaN: true }),
    by: fc.double({ min: 0.2, max: 1, noNaN: true }),
    count: fc.integer({ min: 1, max: 2 }),
  })
  .map(({ first, by, count, ...rest }): ShiftBlock => ({ ...rest, gains: falling(first, by, count) }));
const limits = fc
  .record({
    most: fc.integer({ min: 0, max: 40 }),
    groups: fc.tuple(...[0, 1, 2].map(() => fc.tuple(fc.integer({ min: 0, max: 3 }), fc.integer({ min: 3, max: 30 })))),
  })
  .map(({ most, groups }): ShiftLimits => ({ most, groups: groups.map(([least, up]) => ({ least, most: up })) }));

describe('whole shifts within a sum of hours', () => {
  it('are the best of all choices, one by one, and those of an integer program', () => {
    fc.assert(
      fc.property(fc.array(block, { minLength: 1, maxLength: 6 }), limits, (blocks, within) => {
        const wanted = bruteForce(blocks, within);
        const found = bestShifts(blocks, within).at(within.most);
        const solved = solver.solve(shiftProgram(blocks, within, true));
        if (wanted === null) return found === null && solved === null;
        expect(found?.gain).toBeCloseTo(wanted, 9);
        expect(choiceOf(blocks, found!.taken).gain).toBeCloseTo(wanted, 9);
        expect(found!.spent).toBeLessThanOrEqual(within.most);
        expect(solved?.gain).toBeCloseTo(wanted, 6);
        return true;
      }),
      { numRuns: 120, seed: 7 },
    );
  });

  it('are bounded by divided shifts, whose gain is that of the linear program', () => {
    fc.assert(
      fc.property(fc.array(block, { minLength: 1, maxLength: 8 }), limits, (blocks, within) => {
        const solved = solver.solve(shiftProgram(blocks, within, false));
        const divided = dividedShifts(blocks, within);
        if (solved === null || divided === null) return solved === null && divided === null;
        expect(divided.gain).toBeCloseTo(solved.gain, 6);
        const whole = bestShifts(blocks, within).at(within.most);
        expect(whole === null || whole.gain <= divided.gain + 1e-9).toBe(true);
        return true;
      }),
      { numRuns: 120, seed: 8 },
    );
  });

  it('have the shadow price of the linear program', () => {
    const blocks: ShiftBlock[] = [
      { group: 0, size: 10, gains: [5, 3] },
      { group: 1, size: 8, gains: [3.2, 1] },
    ];
    const within = { most: 22, groups: [0, 1].map(() => ({ least: 0, most: 22 })) };
    // By hand: 10 hours at 0.5, 8 at 0.4, and 4 of the ten at 0.3.
    expect(dividedShifts(blocks, within)).toEqual({ gain: expect.closeTo(9.4, 12), price: expect.closeTo(0.3, 12) });
    expect(solver.solve(shiftProgram(blocks, within, false))?.prices?.[0]).toBeCloseTo(0.3, 9);
  });

  it('fill the published knapsack as published', () => {
    // Kreher DL, Stinson DR (1999) Combinatorial Algorithms, knapsack of capacity 165: best profit 309, the first four and
    // the sixth; also problem P01 of Burkardt’s collection. Digits from memory.
    const sizes = [23, 31, 29, 44, 53, 38, 63, 85, 89, 82];
    const gains = [92, 57, 49, 68, 60, 43, 67, 84, 87, 72];
    const blocks = sizes.map((size, at): ShiftBlock => ({ group: 0, size, gains: [gains[at]!] }));
    const within = { most: 165, groups: [{ least: 0, most: 165 }] };
    expect(bestShifts(blocks, within).at(165)).toEqual({
      taken: [1, 1, 1, 1, 0, 1, 0, 0, 0, 0],
      spent: 165,
      gain: 309,
    });
    expect(solver.solve(shiftProgram(blocks, within, true))?.gain).toBeCloseTo(309, 6);
  });
});

describe('whole shifts at the edges', () => {
  const free = (most: number, groups = 1): ShiftLimits => {
    return { most, groups: Array.from({ length: groups }, () => ({ least: 0, most })) };
  };

  it('of sizes with a common measure are the best of all choices for every sum', () => {
    // Sums between multiples of 4 cannot be spent; every choice is tried.
    const blocks: ShiftBlock[] = [
      { group: 0, size: 8, gains: [5, 4, 1] },
      { group: 0, size: 12, gains: [7, 2] },
      { group: 1, size: 4, gains: [2, 1.5] },
    ];
    const best = bestShifts(blocks, free(45, 2));
    for (const most of [0, 3, 4, 7, 8, 11, 12, 20, 27, 36, 45, 60]) {
      const found = best.at(most)!;
      expect(found.gain).toBeCloseTo(bruteForce(blocks, free(Math.min(most, 45), 2))!, 12);
      expect(choiceOf(blocks, found.taken)).toEqual(found);
      expect(found.spent).toBeLessThanOrEqual(Math.min(most, 45));
    }
  });

  it('that bring nothing are not bought', () => {
    const blocks: ShiftBlock[] = [{ group: 0, size: 5, gains: [0] }];
    expect(bestShifts(blocks, free(20)).at(20)).toEqual({ taken: [0], spent: 0, gain: 0 });
    expect(bestShifts([], free(20)).at(20)).toEqual({ taken: [], spent: 0, gain: 0 });
  });

  it('need whole sizes above 0, a whole sum, and no more than 255 in a block', () => {
    const block = (size: number, count = 1): ShiftBlock => ({
      group: 0,
      size,
      gains: new Array<number>(count).fill(1),
    });
    for (const size of [0, -1, 1.5]) expect(() => bestShifts([block(2), block(size)], free(9))).toThrow(RangeError);
    expect(() => bestShifts([block(2)], free(9.5))).toThrow(RangeError);
    expect(() => bestShifts([block(1, 256)], free(9))).toThrow(RangeError);
    expect(bestShifts([block(1, 255)], free(255)).at(255)!.gain).toBe(255);
  });

  it.each([
    // By hand: what the next unit of the sum would buy, 0 where nothing is left to buy.
    [
      'the sum ends with a piece',
      [
        [0, 10, 5, 3],
        [1, 8, 3.2],
      ],
      free(18, 2),
      8.2,
      0.3,
    ],
    [
      'the sum ends within a piece',
      [
        [0, 10, 5, 3],
        [1, 8, 3.2],
      ],
      free(14, 2),
      6.6,
      0.4,
    ],
    [
      'the least takes what is poor',
      [
        [0, 10, 5],
        [1, 8, 0.8],
      ],
      {
        most: 18,
        groups: [
          { least: 0, most: 18 },
          { least: 8, most: 18 },
        ],
      },
      5.8,
      0,
    ],
    [
      'a group has its most',
      [
        [0, 10, 5, 3],
        [1, 8, 2],
      ],
      {
        most: 10,
        groups: [
          { least: 0, most: 10 },
          { least: 0, most: 10 },
        ],
      },
      5,
      0.25,
    ],
    [
      'a group may have but part of a piece',
      [
        [0, 10, 5],
        [1, 8, 2],
      ],
      {
        most: 12,
        groups: [
          { least: 0, most: 6 },
          { least: 0, most: 12 },
        ],
      },
      4.5,
      0.25,
    ],
    ['there is more than can be spent', [[0, 10, 5]], free(30), 5, 0],
  ] as const)('have a shadow price where %s', (_, rows, within, gain, price) => {
    const blocks = rows.map(([group, size, ...gains]): ShiftBlock => ({ group, size, gains }));
    expect(dividedShifts(blocks, within)).toEqual({ gain: expect.closeTo(gain, 12), price: expect.closeTo(price, 12) });
  });

  it('cannot be had where the least is more than there is, or than the sum', () => {
    const blocks: ShiftBlock[] = [{ group: 0, size: 10, gains: [5] }];
    for (const least of [11, 25]) {
      const within = { most: 20, groups: [{ least, most: 30 }] };
      expect([dividedShifts(blocks, within), bestShifts(blocks, within).at(20)]).toEqual([null, null]);
    }
  });
});

describe('the solver', () => {
  it('solves the textbook’s linear program with its shadow prices', () => {
    // Hillier FS, Lieberman GJ, Introduction to Operations Research, Wyndor Glass: 3a + 5b, a ≤ 4, 2b ≤ 12, 3a + 2b ≤ 18;
    // a = 2, b = 6, 36, prices 0, 3/2, 1. Variables here are tenths. Digits from memory, checked by hand.
    const row = (variables: number[], weights: number[], limit: number) => {
      return { variables, weights, side: 'at most' as const, limit };
    };
    const rows = [row([0], [10], 4), row([1], [20], 12), row([0, 1], [30, 20], 18)];
    const solved = solver.solve({ gains: [30, 50], rows, whole: false })!;
    expect(solved.gain).toBeCloseTo(36, 9);
    expect(solved.values.map((value) => 10 * value)).toEqual([expect.closeTo(2, 9), expect.closeTo(6, 9)]);
    expect(solved.prices).toEqual([expect.closeTo(0, 9), expect.closeTo(1.5, 9), expect.closeTo(1, 9)]);
  });

  it('solves the textbook’s program in whole numbers', () => {
    // The same book, California Manufacturing: 9a + 5b + 6c + 4d; build both factories and no warehouse, 14.
    const rows = [
      { variables: [0, 1, 2, 3], weights: [6, 3, 5, 2], side: 'at most' as const, limit: 10 },
      { variables: [2, 3], weights: [1, 1], side: 'at most' as const, limit: 1 },
      { variables: [0, 2], weights: [-1, 1], side: 'at most' as const, limit: 0 },
      { variables: [1, 3], weights: [-1, 1], side: 'at most' as const, limit: 0 },
    ];
    const solved = solver.solve({ gains: [9, 5, 6, 4], rows, whole: true })!;
    expect(solved).toMatchObject({ gain: expect.closeTo(14, 9), prices: null });
    expect(solved.values.map(Math.round)).toEqual([1, 1, 0, 0]);
  });

  it('says that there is none where no values keep the rows', () => {
    const rows = [{ variables: [0], weights: [1], side: 'at least' as const, limit: 2 }];
    expect(solver.solve({ gains: [1], rows, whole: true })).toBeNull();
  });
});
