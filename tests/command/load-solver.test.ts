import { expect, test } from 'vitest';
import { loadSolver } from '../../src/command/load-solver.js';

// Expected: the sum of nothing is 0, so that it keeps every most of 0 or more and no least above 0.
test('a program with nothing to choose is solved as bringing nothing, or not at all where something is asked', async () => {
  const solver = await loadSolver();
  const most = { variables: [], weights: [], side: 'at most', limit: 8 } as const;
  const least = { variables: [], weights: [], side: 'at least', limit: 8 } as const;
  expect(solver.solve({ gains: [], rows: [most], whole: true })).toEqual({ gain: 0, values: [], prices: null });
  expect(solver.solve({ gains: [], rows: [most], whole: false })).toEqual({ gain: 0, values: [], prices: [0] });
  expect(solver.solve({ gains: [], rows: [most, least], whole: true })).toBeNull();
});
