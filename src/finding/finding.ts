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
  /** What a cell without a value says; `not recorded` where absent. */
  readonly whereNone?: string;
  /** Whether a number names its row, as texts do, so that other formulas can ask for it; no where absent. */
  readonly names?: boolean;
}

/** A text, a plain number, an estimate, or null for missing. */
export type FindingCell = string | number | Estimate | null;

/** Some rows of a table, ascending, and what they are in words. */
export interface ToldRows {
  readonly words: string;
  readonly rows: Uint32Array;
  /** The table whose rows they are; that which the finding is asked of where absent. */
  readonly table?: string;
  /** The field whose numbers are added up over them; each row, or each craft, counts once where absent. */
  readonly adds?: string;
}

/** The rows behind one number of an answer. */
export interface RowsBehind {
  /** The rows that it counts, or adds up; null where it counts none. */
  readonly numerator: ToldRows | null;
  /** The rows that it counts them among; null for a plain count. */
  readonly denominator: ToldRows | null;
  /** Further rows that it is made of. */
  readonly uses: readonly ToldRows[];
  /** What makes it of those rows where it is not just their number or share, in words; null where it is. */
  readonly model: string | null;
  /** Whether each row counts, or each craft that some of the rows are of. */
  readonly counts: 'rows' | 'craft';
}

/** The answer to a finding, as a table. */
export interface FindingTable {
  readonly columns: readonly FindingColumn[];
  readonly rows: readonly (readonly FindingCell[])[];
  /** What this run left out and why, each as a sentence with its count. */
  readonly leftOut: readonly string[];
  /** What else must be said of the whole table, such as a test over all its rows; nothing where absent. */
  readonly said?: readonly string[];
  /** The rows behind a number, by the row of the answer and the name of its column; null for words and names. */
  readonly counted?: (row: number, column: string) => RowsBehind | null;
}

/** How a finding is asked in the worked example of the methods page: of the example records, split and told so. */
export interface FindingExample {
  readonly by: readonly string[];
  readonly options: Readonly<Record<string, string | number>>;
}

/** What a reader must know to defend a finding's numbers. */
export interface FindingAccount {
  readonly definition: string;
  readonly numerator: string;
  readonly denominator: string;
  readonly leftOut: string;
  readonly method: string;
  readonly source: string;
  /** The arithmetic in one line, in the words of the columns. */
  readonly formula: string;
  /** Asked when the methods page is made, so that its numbers are this program's own. */
  readonly example: FindingExample;
}

/** Something a finding may be told: how many minutes are the target, which standard a wash is held to. */
export interface FindingOption {
  /** One word, as a sheet's sentence says it before the value: `target`. */
  readonly name: string;
  readonly kind: 'number' | 'text';
  /** The unit of a number, in words; null for a plain one and for text. */
  readonly unit: string | null;
  /** The only values it may have; null where any may stand. */
  readonly choices: readonly string[] | null;
  /** The least that a number may be which counts something, so that only whole ones may stand; any number where absent. */
  readonly countsFrom?: number;
  /** The value where nothing is said; null where the finding then leaves out what needs it. */
  readonly usual: string | number | null;
  readonly meaning: string;
}

/** What a finding is told besides its rows. */
export interface FindingChoices {
  /** The values of its options, by name; none for those that were not given and have no usual value. */
  readonly values: ReadonlyMap<string, string | number>;
  /** How many resamples are drawn, and with which seed, where limits come from resampling. */
  readonly resamples: { readonly count: number; readonly seed: number };
}

/** One of the trade's questions, asked of some rows of one table, for all together or by some of its fields. */
export interface Finding {
  /** Its name in words, as a notebook's sheet sentence says it: `fouling sites`. */
  readonly name: string;
  /** The table whose rows it is asked of. */
  readonly table: string;
  readonly account: FindingAccount;
  /** What it may be told; nothing where absent. */
  readonly options?: readonly FindingOption[];
  /**
   * Whether its answer tells no more than the numbers of the rows behind each of its numbers, so that a page for the public
   * can show it and withhold small ones; no where absent.
   */
  readonly tellsCountsOnly?: boolean;
  /** The answer for those rows (ascending row numbers), split by the fields named. */
  readonly find: (
    book: Book,
    table: BookTable,
    rows: Uint32Array,
    by: readonly string[],
    choices: FindingChoices,
  ) => FindingTable;
}
