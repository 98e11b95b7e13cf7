import type { Problem } from '../problem/problem.js';
import type { ImportSum } from '../record/file-sum.js';
import type { Records } from '../record/records.js';
import type { DoubleEntry } from './check-double-entries.js';
import { finishTables } from './finish-tables.js';
import { Texts } from './key-space.js';
import { type LedgerLine, type LedgerStreams, listOfLines, listOfRows, type SetAsideRow } from './ledger.js';
import type { PastReadings } from './recall/past-import.js';
import type { UnmatchedWater } from './waters/alias.js';
import { nothingWithdrawn } from './withdrawing/withdrawn.js';

/** The records of an import with their account, or what stops it. */
export interface ImportResult {
  readonly records: Records;
  readonly sum: ImportSum;
  /** One line a problem that set a row aside, in order of file and line. */
  readonly setAside: readonly LedgerLine[];
  /** One line a problem noted on a kept row. */
  readonly notes: readonly LedgerLine[];
  readonly setAsideRows: readonly SetAsideRow[];
  /** The same three line by line, each line made when it is asked for; null where they are lists already. */
  readonly ledgers: LedgerStreams | null;
  /** Pairs of rows that record one event under two keys, whatever became of them. */
  readonly doubleEntries: readonly DoubleEntry[];
  /** Names of waters that matched none, the most frequent first. */
  readonly unmatched: readonly UnmatchedWater[];
  /** What a later import needs beside the records, so as not to read the same files again. */
  readonly remembered: PastReadings & { readonly aside: Records };
  /** The files that were read; the others were taken from the import before. */
  readonly filesRead: readonly string[];
  /** Rows mended in an import before that could not be taken in again, since their files changed. */
  readonly mendedLost: readonly { readonly file: string; readonly line: number }[];
  /** Whether anything differs from the import before: a file, a crosswalk, the program or the key. */
  readonly isNew: boolean;
  /** What stops the import: where there is one, no records are given, and nothing may be stored. */
  readonly problems: readonly Problem[];
}

/**
 * An import that came to its end, its lists made from the ledgers when they are asked for. Made here, so that what only the
 * reading needed is not held for as long as the lists can be made.
 */
export function finishedImport(
  found: Omit<ImportResult, 'setAside' | 'notes' | 'setAsideRows' | 'ledgers' | 'isNew' | 'problems'>,
  ledgers: LedgerStreams,
): ImportResult {
  return {
    ...found,
    ledgers,
    get setAside() {
      return listOfLines(ledgers.setAside());
    },
    get notes() {
      return listOfLines(ledgers.notes());
    },
    get setAsideRows() {
      return listOfRows(ledgers.setAsideRows());
    },
    isNew: true,
    problems: [],
  };
}

/** An import that was stopped. */
export function stoppedImport(problems: readonly Problem[]): ImportResult {
  const sum = { files: [], definitionChanges: [], asOf: null, fingerprint: '' };
  const records = finishTables([], new Texts());
  return {
    records,
    sum,
    setAside: [],
    notes: [],
    setAsideRows: [],
    ledgers: null,
    doubleEntries: [],
    unmatched: [],
    remembered: { program: '', key: null, readings: [], withdrawn: nothingWithdrawn, aside: records },
    filesRead: [],
    mendedLost: [],
    isNew: true,
    problems,
  };
}
