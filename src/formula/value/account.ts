/** Rows that one number, which comes from records itself, decides anew in every resample: those whose own lies on its one side. */
export interface DrawnRows {
  /** The rows that stand but for it, ascending. */
  readonly rows: Uint32Array;
  /** What each of them has, to be held against it; NaN for missing. */
  readonly values: Float64Array;
  readonly operator: '<' | '<=' | '>' | '>=';
  /** What it is in each resample; NaN where it is not defined. */
  readonly thresholds: () => Float64Array;
  /** The fewest records that it rests on, and the fewest and most station-days; null where nothing is known. */
  readonly fewest: number | null;
  readonly clusters: () => { readonly fewest: number; readonly most: number } | null;
}

/** Those of drawn rows that are kept; asked with their place among them. */
export function narrowDrawn(drawn: DrawnRows, kept: (position: number) => boolean): DrawnRows {
  const positions = Array.from(drawn.rows.keys()).filter(kept);
  return {
    ...drawn,
    rows: Uint32Array.from(positions, (position) => drawn.rows[position]!),
    values: Float64Array.from(positions, (position) => drawn.values[position]!),
  };
}

/** Those of drawn rows that are among some. */
export function drawnAmong(drawn: DrawnRows, rows: Uint32Array): DrawnRows {
  const among = new Set(rows);
  return narrowDrawn(drawn, (position) => among.has(drawn.rows[position]!));
}

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
  /** How that decides them in every resample; nothing where absent, and then what decides them is taken as known. */
  readonly drawn?: DrawnRows;
  /** What makes a number of these rows where it is not just their count or share, in words; nothing where absent. */
  readonly model?: string;
}

/** Several accounts as one, each kept once. */
export function mergeAccounts(accounts: readonly (readonly CountedRecords[])[]): readonly CountedRecords[] {
  return [...new Set(accounts.flat())];
}
