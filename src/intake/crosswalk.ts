import type { Place } from '../problem/problem.js';
import type { Field, TableDefinition } from '../record/field.js';
import type { DefinitionChange } from '../record/file-sum.js';
import type { DatePattern } from './date-pattern.js';
import type { LeaveOutRule } from './leave-out.js';
import type { ThousandsMark } from './number-marks.js';
import type { Preparation } from './prepare-cell.js';
import type { RuleChoices } from './rules/rule-choices.js';
import type { Encoding } from './source/encoding.js';
import type { Alias, WaterRule } from './waters/alias.js';

/** How the text of a file is cut into rows and cells. */
export interface Dialect {
  /** One byte. */
  readonly delimiter: number;
  /** One byte; null where no cell is ever quoted. */
  readonly quote: number | null;
  readonly encoding: Encoding;
  /** The physical line of the header, from 1; lines before it are not rows. Null where it is found by its headings. */
  readonly headerLine: number | null;
  /** Over how many lines the header runs. */
  readonly headerSpan: number;
  /** Whether headings count as the same when they differ only in case and spaces. */
  readonly looseHeadings: boolean;
  /** Whether the text was made from a sheet: quotes are sure to be closed, each row has one line, and may end early. */
  readonly isSheet: boolean;
  /** Whether the text of cells merged below the header of a sheet holds in each of their rows. */
  readonly spreadsMerged: boolean;
  /** Most bytes that the file may have once it is unpacked. */
  readonly mostUnpacked: number;
}

/** A code that held from one season to another, both inclusive. */
export interface SeasonalCode {
  readonly from: number;
  readonly to: number;
  readonly code: string | null;
}

/** What a cell's text stands for: a code or key, null for missing, or one by season. */
export type CodeMeaning = string | null | readonly SeasonalCode[];

/** A number in the file's unit becomes the field's by `number × factor ÷ divisor + shift`. */
export interface Conversion {
  readonly factor: number;
  readonly divisor: number;
  readonly shift: number;
}

/** How one field is read, from one column or from several joined by a space. */
export interface FieldRule {
  readonly field: Field;
  readonly columns: readonly string[];
  /** What the cells' texts stand for; null where they are taken as they are. */
  readonly codes: ReadonlyMap<string, CodeMeaning> | null;
  readonly pattern: DatePattern | null;
  readonly conversion: Conversion | null;
  /** The unit of the file's numbers, in words; null for the field's own. */
  readonly unit: string | null;
  /** Whether a keyed hash stands for the text, which is never stored. */
  readonly hashed: boolean;
  /** Whether the cells are registration numbers, whose prefixes tell the state. */
  readonly fromRegistration: boolean;
  /** Whether each number is written with its unit. */
  readonly isWritten: boolean;
  /** What is done with the text before it is read; null for nothing. */
  readonly preparation: Preparation | null;
  /** Texts that are read as missing in its columns; null for those of the file. */
  readonly missing: readonly string[] | null;
  /** What each of them means, where that is said; null where those of the file hold. */
  readonly missingWhy: ReadonlyMap<string, string> | null;
  /** Whether codes are told apart by their letters only, not by their case. */
  readonly anyCase: boolean;
  /** The moment before which a time of day, joined with a date, is of the next day; absent where it never is. */
  readonly nextDayIfBefore?: string;
  /** Of several columns of which one is filled in, the places of those whose number is taken away; absent for other fields. */
  readonly minus?: ReadonlySet<number>;
  /** Whether a field joined from several cells is missing where only some of them are filled in; else the row is set aside. */
  readonly partlyBlankIsMissing?: boolean;
}

/** How a cell that names several parts tells of one of them; values are given by their keys in the fold. */
export interface FoldList {
  /** What stands between the parts named. */
  readonly between: string;
  /** The part that each text names. */
  readonly texts: ReadonlyMap<string, string>;
  /** Texts that say that no part is meant. */
  readonly none: ReadonlySet<string>;
  readonly named: string;
  readonly otherwise: string;
  /** For a part that was not named and that the craft cannot carry. */
  readonly absent: string;
  readonly blank: string;
  /** The part told of. */
  readonly part: string;
}

/** The part that a column of a wide checklist records. */
export interface FoldColumn {
  readonly column: string;
  readonly component: string;
  readonly side: string;
  /** Whether a file may lack the column. */
  readonly isOptional: boolean;
  /** How the part is found in a cell that names several; null where the column is its own. */
  readonly list: FoldList | null;
}

/** A checklist with a column a part: each row gives as many records of another table. */
export interface Fold {
  readonly table: TableDefinition;
  readonly columns: readonly FoldColumn[];
  /** What a cell's text says, as fields of the folded record. */
  readonly values: ReadonlyMap<string, ReadonlyMap<string, string>>;
  /**
   * The key, among the values, of what a part is read as that the craft cannot carry and that is called clean; null where
   * the crosswalk does not read it as absent.
   */
  readonly absent: string | null;
}

/** Which of the entries of one event is kept. */
export type DoubleEntryKeep = 'first' | 'last' | 'neither' | 'both';

/** How the files of one kind are read: which they are, and what each of their columns means. */
export interface FileRule {
  readonly patterns: readonly string[];
  readonly place: Place;
  readonly table: TableDefinition;
  readonly dialect: Dialect;
  /** The zone of times without an offset; null where each row takes its station's. */
  readonly timeZone: string | null;
  readonly repeated: 'first' | 'second' | null;
  readonly decimalByte: number;
  /** What stands between groups of three digits. */
  readonly thousands: ThousandsMark | null;
  /** Texts that are read as missing in every column. */
  readonly missing: readonly string[];
  /** What each of them means, where the crosswalk says so. */
  readonly missingWhy: ReadonlyMap<string, string>;
  /** The field whose local year is the row's season. */
  readonly seasonOf: string | null;
  /** Every column that must stand in the header. */
  readonly columns: readonly string[];
  /** Of those, the ones that a file may lack. */
  readonly optional: ReadonlySet<string>;
  readonly privateColumns: ReadonlySet<string>;
  readonly fields: readonly FieldRule[];
  /** Fields that are the same in every row: codes, keys and texts, or numbers and day numbers. */
  readonly constants: ReadonlyMap<string, string | number>;
  readonly fold: Fold | null;
  /** Whether its rows only fill in what rows of other files with the same key leave out. */
  readonly completes: boolean;
  /** Rows that are no records, such as totals. */
  readonly leaveOut: readonly LeaveOutRule[];
  /** Fields that are alike in two entries of one event; empty where none are looked for. */
  readonly duplicates: readonly string[];
  /** Which of two entries of one event is kept. */
  readonly keep: DoubleEntryKeep;
  /** What its crosswalk makes of the rules. */
  readonly choices: RuleChoices;
  /** The fields whose names of waters are matched once the file is read. */
  readonly waters: readonly WaterRule[];
  /** The names by which its crosswalk knows the waters, beside those that the waters bear themselves. */
  readonly aliases: readonly Alias[];
}

/** What the exports of one program mean in the canonical tables. */
export interface Crosswalk {
  readonly name: string;
  readonly about: string;
  /** Milliseconds since 1970; null where the crosswalk does not say. */
  readonly asOf: number | null;
  /** The same moment as written, with its time zone; empty where the crosswalk does not say. */
  readonly asOfWords: string;
  readonly definitionChanges: readonly DefinitionChange[];
  readonly choices: RuleChoices;
  /** The path of the file of aliases, beside the crosswalk; null where there is none. */
  readonly aliasFile: string | null;
  readonly files: readonly FileRule[];
  /** SHA-256 of its text, in hexadecimal. */
  readonly fingerprint: string;
  /** The text it was read from. */
  readonly text: string;
}
