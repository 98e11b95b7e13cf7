/** The form of what pages carry; raised when older programs could not read it rightly. */
export const resultsForm = 'rampbook page 1';

/** Limits as a page carries them: null at an end that is not reached. */
export interface CarriedInterval {
  readonly low: number | null;
  readonly high: number | null;
  readonly confidence: number;
  readonly sides: 'two' | 'upper' | 'lower';
}

/** A value as a page carries it: a number, or a text, or only why there is none. What is absent is left out. */
export interface CarriedValue {
  /** A number, unrounded; null where there is none, and `why` says so. */
  readonly value?: number | null;
  readonly unit?: string;
  readonly interval?: CarriedInterval;
  readonly numerator?: number;
  readonly denominator?: number;
  /** A text, a date, yes or no, as shown. */
  readonly text?: string;
  /** Why there is no value, or no interval. */
  readonly why?: string;
}

/** A figure with its definition and what it stands on. */
export interface CarriedFigure extends CarriedValue {
  readonly name: string;
  readonly formula: string;
  readonly shownAs: string;
  /** Names of the notebook that the formula uses. */
  readonly needs: readonly string[];
  /** The tables whose records were counted for it. */
  readonly records: readonly string[];
}

/** An input with its unit and source. */
export interface CarriedInput extends CarriedValue {
  readonly name: string;
  readonly source: string;
}

/** Named rows, and how many they are. */
export interface CarriedSelection {
  readonly name: string;
  readonly formula: string;
  readonly table: string;
  /** Null where a page for the public withholds it. */
  readonly rows: number | null;
  readonly needs: readonly string[];
}

/** A cell of a sheet: a number or a number with its limits, each to six digits; a text; null where there is no value. */
export type CarriedCell =
  | number
  | string
  | null
  | readonly [value: number | null, low: number | null, high: number | null];

/** A column of a sheet; `key` columns name the rows. */
export interface CarriedColumn {
  readonly name: string;
  readonly key: boolean;
  readonly formula: string;
  readonly shownAs: string;
  readonly unit: string;
}

/** A sheet with its definition and its cells. */
export interface CarriedSheet {
  readonly name: string;
  readonly sentence: string;
  readonly needs: readonly string[];
  readonly columns: readonly CarriedColumn[];
  /** How many rows the sheet has. */
  readonly count: number;
  /** The cells of each row; none where the sheet is too long to be carried. */
  readonly rows: readonly (readonly CarriedCell[])[];
  /** The first 16 digits of the SHA-256 of all its values unrounded, in hexadecimal. */
  readonly fingerprint: string;
}

/** A source file: what became of its rows, and the first 16 digits of its SHA-256. */
export interface CarriedFile {
  readonly file: string;
  readonly fingerprint: string;
  readonly read: number;
  readonly kept: number;
  readonly setAside: number;
}

/** What a page carries of itself, so that a folder can list it and a later rendering can be compared with it. */
export interface PageResults {
  readonly form: typeof resultsForm;
  /** The notebook's name, and the page's file name without its ending. */
  readonly name: string;
  readonly title: string;
  /** Whom the page is for; empty where nobody said. */
  readonly audience: string;
  /** The moment up to which the records tell, in words. */
  readonly asOf: string;
  /** The page in one sentence, its values with their intervals; empty where it has none. */
  readonly headline: string;
  readonly program: { readonly version: string; readonly fingerprint: string };
  /** SHA-256 of the notebook and of the records, in hexadecimal. */
  readonly notebook: string;
  readonly records: string;
  /** For which choice the page was made, as sentences; none where it shows all records. */
  readonly chosen: readonly string[];
  readonly seed: number | null;
  readonly resamples: number | null;
  readonly files: readonly CarriedFile[];
  readonly inputs: readonly CarriedInput[];
  readonly selections: readonly CarriedSelection[];
  readonly figures: readonly CarriedFigure[];
  readonly sheets: readonly CarriedSheet[];
}
