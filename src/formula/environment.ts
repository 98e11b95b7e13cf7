import type { Book, BookTable } from '../record/book.js';
import type { Definitions } from './definitions.js';
import type { DrawnRows } from './value/account.js';
import type { Evaluated } from './value/evaluated.js';

/** One group of a sheet: its table, its rows (ascending), and the value of each key field (null for missing). */
export interface Group {
  /** The sheet that it is a row of, where its rows may be spoken of. */
  readonly sheet?: string;
  readonly table: string;
  readonly rows: Uint32Array;
  /** What decided which rows the sheet is of and comes from records itself; nothing where absent. */
  readonly decidedBy?: readonly string[];
  /** How that decides them in every resample; nothing where absent. */
  readonly drawn?: DrawnRows;
  readonly keys: ReadonlyMap<string, string | number | null>;
}

/** How many shared resamples of station-days there are, and the seed they are drawn with. */
export interface Resamples {
  readonly count: number;
  readonly seed: number;
}

/** What is made once for a book and kept between formulas; a new book needs a new one. */
export interface EvaluationCache {
  readonly weights: Map<string, Uint8Array>;
  readonly everyRow: Map<BookTable, Uint32Array>;
  /** Rows by the text of their keys, for each set of rows and key fields. */
  readonly groupsOf: WeakMap<Uint32Array, Map<string, ReadonlyMap<string, Uint32Array>>>;
}

/** A cache with nothing in it. */
export function emptyCache(): EvaluationCache {
  return { weights: new Map(), everyRow: new Map(), groupsOf: new WeakMap() };
}

/** All that a formula's value depends on. */
export interface Environment {
  readonly book: Book;
  /** Inputs, figures, selections and, in a sheet, its earlier columns. */
  readonly known: ReadonlyMap<string, Evaluated>;
  /** How the names are made; left out where no figure is asked for with other inputs. */
  readonly definitions?: Definitions;
  /** The group whose row of a sheet is computed; null for figures and selections. */
  readonly group: Group | null;
  readonly resamples: Resamples;
  readonly cache: EvaluationCache;
}
