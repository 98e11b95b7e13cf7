import type { TableName } from '../../record/field.js';
import type { ImportSum } from '../../record/file-sum.js';
import type { Records } from '../../record/records.js';
import type { DoubleEntry } from '../check-double-entries.js';
import type { LeftOutRow } from '../leave-out.js';
import type { LedgerLine, SetAsideRow } from '../ledger.js';
import type { MendedRow } from '../mending/mending.js';
import type { MissingTimes } from '../missing-times.js';
import type { Saying } from '../remark.js';
import type { UnmatchedWater } from '../waters/alias.js';
import type { Withdrawn } from '../withdrawing/withdrawn.js';
import type { PastLostKey } from './lost-keys.js';

/** A remark made while a file was read: the saying's place, whether it sets its row aside, line, row, column, cell. */
export type PastRemark = readonly [
  saying: number,
  setsAside: 0 | 1,
  line: number,
  row: number | null,
  position: number | null,
  seen: string,
];

/** What reading one file gave beside its rows, so that the file need not be read again while it stays the same. */
export interface PastReading {
  readonly file: string;
  /** SHA-256 of the file's bytes, in hexadecimal. */
  readonly fingerprint: string;
  readonly crosswalk: string;
  /** SHA-256 of the crosswalk's text, in hexadecimal. */
  readonly rules: string;
  /** The place of the file's rule in its crosswalk. */
  readonly rule: number;
  /** The tables that its rows went to: their own, and the one folded out of a wide checklist. */
  readonly tables: readonly TableName[];
  readonly headings: readonly string[];
  readonly header: readonly (readonly [name: string, position: number])[];
  readonly read: number;
  /** The rows left out by rule; absent where there were none. */
  readonly leftOut?: readonly LeftOutRow[];
  /** How often each field was missing, by the text that said so; absent in stores of before. */
  readonly missing?: MissingTimes;
  /** The names of waters that matched none; absent where no names are matched. */
  readonly unmatched?: readonly UnmatchedWater[];
  /** The rows, by their places, that are called clean in the file and were read as absent; left out where there are none. */
  readonly absent?: readonly number[];
  readonly sayings: readonly Saying[];
  readonly remarks: readonly PastRemark[];
  /** The rows that were read as a person mended them. */
  readonly mended: readonly MendedRow[];
  /** Keys of rows that were set aside before they could come among the others. */
  readonly lostKeys: readonly PastLostKey[];
}

/** What an import read, apart from the rows it kept. */
export interface PastReadings {
  /** Fingerprint of the program that read; another one may read otherwise. */
  readonly program: string;
  /** What tells one key of pseudonyms from another; null where nothing was keyed. */
  readonly key: string | null;
  readonly readings: readonly PastReading[];
  readonly withdrawn: Withdrawn;
}

/** An earlier import as a store keeps it, so that files which stayed the same need not be read again. */
export interface PastImport extends PastReadings {
  /** The rows kept. */
  readonly records: Records;
  readonly sum: ImportSum;
  /** The rows set aside that had as many cells as their header, as far as they could be read. */
  readonly aside: Records;
  readonly setAside: readonly LedgerLine[];
  readonly notes: readonly LedgerLine[];
  readonly setAsideRows: readonly SetAsideRow[];
  readonly doubleEntries: readonly DoubleEntry[];
  readonly unmatched: readonly UnmatchedWater[];
}
