import type { Trace } from '../notebook/trace.js';
import type { ImportSum } from '../record/file-sum.js';
import type { CellsOf } from './cell-accounts.js';
import type { FilterOffer } from './choice/filter-offers.js';
import type { Paper } from './style/paper.js';

/** What a page says about where it comes from; nothing in it is read from a clock. */
export interface PageContext {
  /** What was imported. */
  readonly sum: ImportSum;
  readonly program: {
    readonly version: string;
    /** SHA-256 of the program, in hexadecimal. */
    readonly fingerprint: string;
  };
  /** The day up to which the records tell, as readers see it: `30 November 2025`. */
  readonly date: string;
  /** What each figure stands on, by its name; a figure without one says nothing of its records. */
  readonly traces?: ReadonlyMap<string, Trace>;
  /** What each cell of a sheet stands on; left out where the cells have no accounts. */
  readonly cell?: CellsOf;
  /** A brief stands on one sheet of paper or one wide screen; a page of any length where nothing is said. */
  readonly layout?: 'brief';
  /** Whom the page is for, as a phrase; left out where nobody said. */
  readonly audience?: string;
  /** What a reader may choose, and all that the page needs to count again; left out where nothing is offered. */
  readonly live?: LivePage;
  /** The fewest records that the page tells of, where it is for the public. */
  readonly fewest?: number;
  /** Which choice the page was made for, as sentences; left out where it shows all records and nothing is offered. */
  readonly chosen?: readonly string[];
  /** The names that each figure, selection and sheet is made of, so that two renderings can be compared by their causes. */
  readonly needs?: ReadonlyMap<string, readonly string[]>;
  /** The tables whose records were counted for each figure. */
  readonly counted?: ReadonlyMap<string, readonly string[]>;
  /** How limits were resampled. */
  readonly resampling?: { readonly seed: number; readonly resamples: number };
  /** The paper that the page is made for, where it is made to be printed only. */
  readonly paper?: Paper;
}

/** What a reader of a page may choose, and what its script needs to count again. */
export interface LivePage {
  readonly offers: readonly FilterOffer[];
  /** The inputs that are years, which are chosen among the seasons there are. */
  readonly years: readonly { readonly name: string; readonly value: string }[];
  readonly seasons: readonly string[];
  /** The notebook's inputs as they are written in it, by name. */
  readonly inputs: ReadonlyMap<string, string>;
  /** Which choice the page shows when it is opened, as sentences. */
  readonly said: readonly string[];
  /** The script that counts again; `packed` is its text as DEFLATE in base64. */
  readonly engine: { readonly text: string; readonly packed: string };
  /** The notebook and its records, as DEFLATE in base64. */
  readonly season: string;
}
