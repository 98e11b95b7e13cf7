/** A linear program: the most of a sum over variables from 0 to 1, whole ones where `whole` says so. */
export interface LinearProgram {
  /** What a whole variable brings. */
  readonly gains: readonly number[];
  readonly rows: readonly ProgramRow[];
  readonly whole: boolean;
}

/** A limit on a weighted sum of some variables. */
export interface ProgramRow {
  readonly variables: readonly number[];
  readonly weights: readonly number[];
  readonly side: 'at most' | 'at least';
  readonly limit: number;
}

/** The best values found, proven best. */
export interface SolvedProgram {
  readonly gain: number;
  readonly values: readonly number[];
  /** What one unit more of each row's limit would bring; null for programs in whole numbers, which have no such price. */
  readonly prices: readonly number[] | null;
}

/** A solver of linear programs, with its name and version; null where no values keep the rows. */
export interface ProgramSolver {
  readonly name: string;
  readonly solve: (program: LinearProgram) => SolvedProgram | null;
}
