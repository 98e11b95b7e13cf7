import type { Column } from './column.js';
import type { ImportSum } from './file-sum.js';
import type { ProgramSolver } from './program-solver.js';
import type { Origin } from './records.js';

/** How the wait of a row ended. */
export const waitEnding = { open: 0, ended: 1, otherwise: 2, unknown: 3 } as const;

/**
 * Minutes from one moment to another, one a row, with how each ended: `open` is still going on at the cut-off (the
 * minutes so far), `ended` as hoped, `otherwise` by a competing event such as leaving unwashed, `unknown` has no minutes.
 */
export interface WaitColumn {
  readonly kind: 'wait';
  readonly minutes: Float64Array;
  readonly ending: Uint8Array;
}

/** The values of one field, one a row. */
export type BookColumn = Column | WaitColumn;

/** A field as formulas and findings see it, whether recorded or derived. */
export interface BookField {
  readonly name: string;
  readonly kind: 'text' | 'number' | 'date' | 'instant' | 'wait';
  /** The unit of a number, in words: `minutes`, `dollars`, `staff hours`, `feet`; null for none. */
  readonly unit: string | null;
  /** The values a text field may have, in the order in which they are shown; null where any text may stand. */
  readonly codes: readonly string[] | null;
  /** The names shown for coded values, where they differ from the codes. */
  readonly labels: ReadonlyMap<string, string> | null;
  readonly meaning: string;
}

/** A table as formulas and findings see it: recorded fields, fields of its parents, and derived ones. */
export interface BookTable {
  readonly name: string;
  /** What one row is. */
  readonly row: string;
  /** What its rows are counted in: `inspections`, `looks`, `washes`, `station days`. */
  readonly counted: string;
  readonly rowCount: number;
  readonly fields: ReadonlyMap<string, BookField>;
  /** The values of a field, built on first use and kept; throws for a name that is not in `fields`. */
  readonly column: (name: string) => BookColumn;
  /** The station-day each row belongs to, or null where rows belong to none (spending). */
  readonly clusterOf: Uint32Array | null;
  readonly origin: Origin | null;
  /** The table whose fields its rows have besides their own; nothing where there is none. */
  readonly parent?: ParentTable;
}

/** The table that gives each row of another some of its fields, as inspections do for looks. */
export interface ParentTable {
  readonly table: BookTable;
  /** Whether a field of the other table is this one's, with the value at the row's parent. */
  readonly gives: (field: string) => boolean;
  /** The parent of each row, as a row of this table; made when first asked for. */
  readonly rowOf: () => Int32Array;
}

/** The station-days that resampling draws from, each in the stratum (station and season) it is drawn within. */
export interface Clusters {
  readonly count: number;
  readonly stratumOf: Uint32Array;
}

/** A season's tables, ready to be asked. */
export interface Book {
  readonly tables: ReadonlyMap<string, BookTable>;
  readonly clusters: Clusters;
  readonly sum: ImportSum;
  /** Solves linear programs for findings that plan; where absent, they do with their own methods and say so. */
  readonly solver?: ProgramSolver;
}
