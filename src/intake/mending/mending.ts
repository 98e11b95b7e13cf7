import type { Place } from '../../problem/problem.js';

/** The word that stands for a private cell in ledgers, and in a mended row for the cell as its file has it. */
export const withheld = 'withheld';

/** The word by which a mended cell is emptied, since an empty one says that nothing was mended. */
export const emptied = '(empty)';

/** A line of the file of corrections that a person made: a row as it should stand, or one cell of it. */
export interface Correction {
  /** Where the correction stands, for messages. */
  readonly place: Place;
  readonly file: string;
  readonly line: number;
  /** The column's heading; null where `text` is the whole row. */
  readonly column: string | null;
  readonly text: string;
}

/** A row that was set aside, as a person says it should stand in its file; private cells are `withheld`. */
export interface MendedRow {
  readonly line: number;
  readonly row: string;
}
