import type { RecordSets } from './record-sets.js';

/** A set of records by its table and number. */
export interface ToldSet {
  readonly sets: RecordSets;
  readonly number: number;
}

/** Something that the page shows: a figure, a selection's count, or a cell of a sheet. */
export interface ToldCell {
  readonly key: string;
  /** The sheet it is in; empty for figures and selections. */
  readonly sheet: string;
  /** The column and row within the sheet. */
  readonly column: string;
  readonly row: number;
  readonly told: readonly ToldSet[];
  /** Whether it must be withheld whatever else is. */
  readonly isFew: boolean;
}

/** The key of a cell of a sheet. */
export function cellKey(sheet: string, column: string, row: number): string {
  return JSON.stringify([sheet, column, row]);
}
