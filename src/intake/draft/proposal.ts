import type { TableDefinition } from '../../record/field.js';
import type { ThousandsMark } from '../number-marks.js';

/** How sure a proposal is: `sure` by heading and values, `likely` by one of them, `unsure` where a person must look. */
export type Sureness = 'sure' | 'likely' | 'unsure';

/** What a text of a column is proposed to stand for; null where a person must say. */
export type ProposedCodes = ReadonlyMap<string, string | null>;

/** How a column of names of waters is told its region: by another column, or the same for all; null where neither is known. */
export interface WaterProposal {
  readonly regionColumn: string | null;
  readonly region: string | null;
}

/** What is proposed for one column, or for several joined into one field. */
export interface ColumnProposal {
  readonly column: string;
  readonly use:
    | { readonly kind: 'field'; readonly field: string; readonly hashed: boolean }
    | { readonly kind: 'drop' }
    | { readonly kind: 'ignore'; readonly reason: string }
    | { readonly kind: 'undecided' };
  readonly pattern: string | null;
  readonly unit: string | null;
  /** What stands between several values in its cells; null where each holds one. */
  readonly between: string | null;
  readonly codes: ProposedCodes | null;
  /** The seasons in which some of its texts are met and in others not, as a crosswalk writes them: `2025-`. */
  readonly seasons: ReadonlyMap<string, string>;
  /** How its names of waters are matched; null where it holds none, or keys. */
  readonly water: WaterProposal | null;
  readonly sureness: Sureness;
  readonly why: string;
  /** What a person must decide before the crosswalk is used. */
  readonly questions: readonly string[];
}

/** A field read from a column of dates and one of times. */
export interface CombineProposal {
  readonly field: string;
  readonly columns: readonly [date: string, time: string];
  readonly pattern: string;
  readonly sureness: Sureness;
  readonly why: string;
  readonly questions: readonly string[];
}

/** A column of a wide checklist with the part it records. */
export interface FoldedColumnProposal {
  readonly column: string;
  readonly component: string;
  readonly side: string;
  readonly sureness: Sureness;
}

/** What a mark of a wide checklist is proposed to say. */
export interface FoldedValueProposal {
  readonly text: string;
  readonly state: string | null;
  readonly finding: string | null;
  readonly times: number;
}

/** A wide checklist within the rows of a file. */
export interface FoldProposal {
  readonly columns: readonly FoldedColumnProposal[];
  readonly values: readonly FoldedValueProposal[];
  readonly why: string;
}

/** What is proposed for the files of one kind. */
export interface FileProposal {
  readonly patterns: readonly string[];
  readonly table: TableDefinition;
  readonly tableSureness: Sureness;
  readonly tableWhy: string;
  readonly encoding: string;
  readonly delimiter: string;
  readonly headerLine: number;
  /** Over how many lines the header runs. */
  readonly headerSpan: number;
  readonly decimal: 'point' | 'comma';
  /** What stands between groups of three digits; null for nothing. */
  readonly thousands: ThousandsMark | null;
  /** How the first cells of rows of totals begin, and how many such rows there are; null for none. */
  readonly totals: { readonly like: string; readonly rows: number } | null;
  readonly missing: readonly string[];
  readonly timeZone: string | null;
  /** The field whose year is the season of a row; null where no season is needed. */
  readonly seasonOf: string | null;
  readonly columns: readonly ColumnProposal[];
  readonly combined: readonly CombineProposal[];
  readonly fold: FoldProposal | null;
  /** Required fields that no column gives. */
  readonly lacking: readonly string[];
  readonly questions: readonly string[];
  /** How many rows were looked at, and whether they were all. */
  readonly rows: number;
  readonly isWhole: boolean;
}
