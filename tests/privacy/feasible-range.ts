import { loadSolver } from '../../src/command/load-solver.js';
import type { ProgramRow, ProgramSolver } from '../../src/record/program-solver.js';

/** What anybody who reads a page knows: the sum of some unknown counts. */
export interface KnownSum {
  readonly of: readonly number[];
  readonly sum: number;
}

/** No count of these tests is higher, so that a range up to here is one without end. */
const highest = 10_000;

const solver: ProgramSolver = await loadSolver();

/**
 * The least and the most that a sum of unknown counts may be, where none is negative and some sums are known, by a linear
 * program each (HiGHS: Huangfu and Hall 2018). Throws where the sums contradict each other.
 */
export function feasibleRange(
  unknowns: number,
  known: readonly KnownSum[],
  of: readonly number[],
): { readonly least: number; readonly most: number } {
  const rows = known.flatMap(({ of: variables, sum }): ProgramRow[] => {
    const weights = variables.map(() => 1);
    const limit = sum / highest;
    return [
      { variables, weights, side: 'at most', limit: limit + 1e-9 },
      { variables, weights, side: 'at least', limit: limit - 1e-9 },
    ];
  });
  const end = (sign: number): number => {
    const gains = Array.from({ length: unknowns }, (_, at) => (of.includes(at) ? sign : 0));
    const solved = solver.solve({ gains, rows, whole: false });
    if (solved === null) throw new Error('the known sums contradict each other');
    return sign * solved.gain * highest;
  };
  return { least: end(-1), most: end(1) };
}
