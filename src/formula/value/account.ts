/** Records counted, and how they came to be the ones: what `trace` tells of every count under a figure. */
export interface CountedRecords {
  readonly table: string;
  /** The rows in words, as the formula says them: `inspections where extent is "full"`. */
  readonly description: string;
  /** The rows counted, ascending. */
  readonly rows: Uint32Array;
  /** How many rows the conditions were asked of. */
  readonly considered: number;
  /** Rows left out because a condition met a missing value, so that nobody knows whether they belong. */
  readonly unknown: number;
  /** Whether a condition met a missing value in every single row, so that their number is not none but not known; no where absent. */
  readonly noneKnown?: true;
  /** Rows that belong but have no value of the field that was asked for. */
  readonly skippedMissing: number;
  /** What decided which rows these are and comes from records itself; nothing where absent. */
  readonly decidedBy?: readonly string[];
}

/** Several accounts as one, each kept once. */
export function mergeAccounts(accounts: readonly (readonly CountedRecords[])[]): readonly CountedRecords[] {
  return [...new Set(accounts.flat())];
}
