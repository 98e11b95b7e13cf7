import type { Trace } from '../notebook/trace.js';
import type { ImportSum } from '../record/file-sum.js';
import type { CellTrace } from './cell-accounts.js';

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
  readonly cell?: CellTrace;
  /** A brief stands on one sheet of paper or one wide screen; a page of any length where nothing is said. */
  readonly layout?: 'brief';
  /** Whom the page is for, as a phrase; left out where nobody said. */
  readonly audience?: string;
}
