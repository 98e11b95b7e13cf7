import type { LinearProgram, ProgramRow, ProgramSolver } from '../../record/program-solver.js';
import { dividedShifts } from '../../statistic/allocation/divided-shifts.js';
import type { ShiftBlock, ShiftChoice, ShiftLimits } from '../../statistic/allocation/shift-choice.js';

/** The choice of whole shifts as a linear program: a variable a shift, the sum spent as its first row. */
export function shiftProgram(blocks: readonly ShiftBlock[], limits: ShiftLimits, whole: boolean): LinearProgram {
  const shifts = blocks.flatMap(({ group, size, gains }, block) =>
    gains.map((gain, shift) => ({ group, size, gain, block, shift })),
  );
  const row = (
    of: (shift: (typeof shifts)[number]) => boolean,
    side: ProgramRow['side'],
    limit: number,
  ): ProgramRow => {
    const variables = shifts.flatMap((shift, at) => (of(shift) ? [at] : []));
    return { variables, weights: variables.map((at) => shifts[at]!.size), side, limit };
  };
  return {
    gains: shifts.map(({ gain }) => gain),
    whole,
    rows: [
      row(() => true, 'at most', limits.most),
      ...limits.groups.flatMap(({ least, most }, group): ProgramRow[] => [
        ...(most < limits.most ? [row((shift) => shift.group === group, 'at most', most)] : []),
        ...(least > 0 ? [row((shift) => shift.group === group, 'at least', least)] : []),
      ]),
      // The second person comes behind the first.
      ...shifts.flatMap(({ shift }, at): ProgramRow[] =>
        shift === 0 ? [] : [{ variables: [at - 1, at], weights: [1, -1], side: 'at least', limit: 0 }],
      ),
    ],
  };
}

/** Further apart than this, two ways to solve one plan have not found the same. */
const alike = 1e-6;

/** Holds what a program's best is found to be to what a solver finds; throws where the two do not agree. */
function holdTo(solver: ProgramSolver, program: LinearProgram, gain: number): void {
  const solved = solver.solve(program);
  if (solved === null) throw new Error('a plan that was found cannot be solved');
  if (Math.abs(solved.gain - gain) > alike * (1 + gain)) {
    throw new Error(`${solver.name} found ${solved.gain} where ${gain} was found`);
  }
}

/** Holds what shifts could bring if they could be divided to what a solver finds; throws where the two do not agree. */
export function boundAgain(solver: ProgramSolver, blocks: readonly ShiftBlock[], limits: ShiftLimits): void {
  const bound = dividedShifts(blocks, limits);
  if (bound === null) throw new Error('a plan that was found cannot be divided');
  holdTo(solver, shiftProgram(blocks, limits, false), bound.gain);
}

/** What a solver makes of a plan that was found otherwise: a sentence; throws where the two do not agree. */
export function solvedAgain(
  solver: ProgramSolver | undefined,
  blocks: readonly ShiftBlock[],
  limits: ShiftLimits,
  { gain }: ShiftChoice,
): string {
  if (solver === undefined) {
    return 'The plan was found by dynamic programming; no other solver was at hand to check it.';
  }
  boundAgain(solver, blocks, limits);
  holdTo(solver, shiftProgram(blocks, limits, true), gain);
  return `The plan was solved as an integer program by ${solver.name} and again by dynamic programming: both found the same best.`;
}
