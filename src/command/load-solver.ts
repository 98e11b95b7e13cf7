import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import type { LinearProgram, ProgramSolver, SolvedProgram } from '../record/program-solver.js';

/** Whether a notebook's text has a sheet whose sentence asks for a plan. */
export function asksForPlan(text: string): boolean {
  return /:\s*(?:staff plan|staff curve)\s+of\s/.test(text);
}

/** The solver of linear programs, loaded where one of the notebooks asks for a plan. */
export async function solverFor(notebooks: readonly string[]): Promise<ProgramSolver | undefined> {
  return notebooks.some(notebookAsksForPlan) ? loadSolver() : undefined;
}

/** Whether a notebook file asks for a plan. */
export function notebookAsksForPlan(file: string): boolean {
  try {
    return asksForPlan(readFileSync(file, 'utf8'));
  } catch {
    // A file that cannot be read is told where it is opened.
    return false;
  }
}

/** HiGHS, compiled to WebAssembly: Huangfu Q, Hall JAJ (2018) Mathematical Programming Computation 10:119-142. */
export async function loadSolver(): Promise<ProgramSolver> {
  const { default: load }: { readonly default: unknown } = await import('highs');
  if (!isLoader(load)) throw new Error('the package highs is not the one this program was written for');
  const highs = await load();
  // Notebooks of one run ask for the same plans: each is solved once.
  const known = new Map<string, SolvedProgram | null>();
  return {
    name: 'HiGHS',
    solve: (program) => {
      if (program.gains.length === 0) return withoutVariables(program);
      const text = written(program);
      const key = createHash('sha256').update(text).digest('base64');
      const solved = known.get(key);
      if (solved !== undefined) return solved;
      const fresh = answered(program, highs.solve(text, exact));
      if (known.size >= mostKnown) known.delete(known.keys().next().value!);
      known.set(key, fresh);
      return fresh;
    },
  };
}

/** A program of nothing to choose, which the solver calls empty and does not answer: sums of nothing keep a row, or do not. */
function withoutVariables({ rows, whole }: LinearProgram): SolvedProgram | null {
  const isKept = rows.every(({ side, limit }) => (side === 'at most' ? limit >= 0 : limit <= 0));
  return isKept ? { gain: 0, values: [], prices: whole ? null : rows.map(() => 0) } : null;
}

const exact = { output_flag: false, mip_rel_gap: 0, mip_abs_gap: 0, random_seed: 0 };

const mostKnown = 200;

function answered(program: LinearProgram, answer: Answer): SolvedProgram | null {
  if (answer.Status === 'Infeasible') return null;
  if (answer.Status !== 'Optimal') throw new Error(`the solver ended with: ${answer.Status}`);
  return read(program, answer);
}

/** The part of the solver's answer that is read. */
interface Answer {
  readonly Status: string;
  readonly ObjectiveValue: number;
  readonly Columns: Readonly<Record<string, object>>;
  readonly Rows: readonly object[];
}

function read(program: LinearProgram, { ObjectiveValue, Columns, Rows }: Answer): SolvedProgram {
  const values = program.gains.map((_, at) => numberIn(Columns[`x${at}`], 'Primal'));
  const prices = program.whole ? null : Rows.map((row) => numberIn(row, 'Dual'));
  return { gain: ObjectiveValue, values, prices };
}

function numberIn(part: object | undefined, name: 'Primal' | 'Dual'): number {
  const value = part === undefined ? undefined : new Map(Object.entries(part)).get(name);
  if (typeof value !== 'number' || !Number.isFinite(value)) throw new Error(`the solver gave no ${name}`);
  return value;
}

/** What of the package is used; its own types are those of its other module format. */
type Loader = () => Promise<{ readonly solve: (text: string, options: object) => Answer }>;

function isLoader(value: unknown): value is Loader {
  return typeof value === 'function';
}

/** The program in the LP format that solvers read. */
function written({ gains, rows, whole }: LinearProgram): string {
  const names = gains.map((_, at) => `x${at}`);
  const sum = (variables: readonly number[], weights: readonly number[]): string =>
    variables.map((variable, at) => `${weights[at]! < 0 ? '-' : '+'} ${Math.abs(weights[at]!)} x${variable}`).join(' ');
  const every = gains.map((_, at) => at);
  return [
    'Maximize',
    `gain: ${sum(every, gains)}`,
    'Subject To',
    ...rows.map(({ variables, weights, side, limit }, row) => {
      return `r${row}: ${sum(variables, weights)} ${side === 'at most' ? '<=' : '>='} ${limit}`;
    }),
    ...(whole ? ['Binary', ...names] : ['Bounds', ...names.map((name) => `0 <= ${name} <= 1`)]),
    'End',
  ].join('\n');
}
