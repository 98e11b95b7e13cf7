import type { TableName } from './field.js';

/** What became of one exported file: rows read = rows kept + rows set aside + rows left out by rule, always. */
export interface FileSum {
  /** The path below the folder of exports, with forward slashes. */
  readonly file: string;
  /** SHA-256 of its bytes, in hexadecimal. */
  readonly fingerprint: string;
  /** The name of the crosswalk that read it. */
  readonly crosswalk: string;
  /** The canonical table that its rows are records of. */
  readonly table: TableName;
  readonly read: number;
  readonly kept: number;
  readonly setAside: number;
  /** Rows that a rule of the crosswalk leaves out, such as totals; absent in stores of before. */
  readonly leftOut?: number;
  /** How many rows were left out for each reason that the crosswalk gives. */
  readonly leftOutBecause?: Readonly<Record<string, number>>;
  /** How many cells of the rows read were missing, by field and by what their text means: blank, not applicable. */
  readonly missing?: Readonly<Record<string, Readonly<Record<string, number>>>>;
  /** Of the rows kept, those that are as a person mended them; left out where there are none. */
  readonly mended?: number;
  /** Check records folded out of its kept rows, where a row holds a whole checklist. */
  readonly folded: number;
  /** How many problems of each code set rows aside (a row may have several). */
  readonly problems: Readonly<Record<string, number>>;
  /** How many problems of each code were noted on kept rows. */
  readonly notes: Readonly<Record<string, number>>;
}

/** A field whose recorded meaning changed from one season to the next: comparisons across it are broken. */
export interface DefinitionChange {
  readonly table: TableName;
  readonly field: string;
  /** The first season of the new meaning. */
  readonly season: number;
  readonly was: string;
  readonly is: string;
}

/** A rule of the intake that a crosswalk set otherwise, with its reason. */
export interface RuleChange {
  readonly crosswalk: string;
  /** The code of the rule. */
  readonly code: string;
  /** What follows where it is broken, unless a crosswalk says otherwise. */
  readonly usual: string;
  /** What follows here. */
  readonly set: string;
  /** The limits declared, in words; empty for the usual ones. */
  readonly limits: string;
  readonly because: string;
}

/** Seasons that somebody withdrew from a store, and the files that were left out for it, with their rows. */
export interface WithdrawnSeasons {
  readonly seasons: readonly number[];
  readonly files: readonly { readonly file: string; readonly read: number }[];
}

/** What was imported: the account that every report prints. */
export interface ImportSum {
  readonly files: readonly FileSum[];
  readonly definitionChanges: readonly DefinitionChange[];
  /** Rules that were set otherwise than usual; absent in stores of before. */
  readonly ruleChanges?: readonly RuleChange[];
  /** The moment up to which the exports tell, in milliseconds since 1970; open washes are censored here. */
  readonly asOf: number | null;
  /** The same moment as its crosswalk writes it, with its time zone: `2025-11-30 18:00, America/Denver`. */
  readonly asOfWords?: string;
  /** Absent where no season was withdrawn. */
  readonly withdrawn?: WithdrawnSeasons;
  /** SHA-256 over the fingerprints of all files and crosswalks: the same exports give the same one. */
  readonly fingerprint: string;
}
