import type { Book, BookTable } from '../record/book.js';
import type { Estimate } from '../statistic/estimate.js';

/** One column of a finding's table. */
export interface FindingColumn {
  readonly name: string;
  /** The heading shown to readers. */
  readonly label: string;
  readonly kind: 'text' | 'number' | 'estimate';
  /** The unit in words; null for text and plain shares. */
  readonly unit: string | null;
  /** How it is shown: `whole`, `percent`, `per 1,000`, `minutes`, `text`, `one decimal`. */
  readonly shownAs: string;
  readonly meaning: string;
}

/** A text, a plain number, an estimate, or null for missing. */
export type FindingCell = string | number | Estimate | null;

/** The answer to a finding, as a table. */
export interface FindingTable {
  readonly columns: readonly FindingColumn[];
  readonly rows: readonly (readonly FindingCell[])[];
  /** What this run left out and why, each as a sentence with its count. */
  readonly leftOut: readonly string[];
}

/** What a reader must know to defend a finding's numbers. */
export interface FindingAccount {
  readonly definition: string;
  readonly numerator: string;
  readonly denominator: string;
  readonly leftOut: string;
  readonly method: string;
  readonly source: string;
}

/** One of the trade's questions, asked of some rows of one table, for all together or by some of its fields. */
export interface Finding {
  /** Its name in words, as a notebook's sheet sentence says it: `fouling sites`. */
  readonly name: string;
  /** The table whose rows it is asked of. */
  readonly table: string;
  readonly account: FindingAccount;
  /** The answer for those rows (ascending row numbers), split by the fields named. */
  readonly find: (book: Book, table: BookTable, rows: Uint32Array, by: readonly string[]) => FindingTable;
}
