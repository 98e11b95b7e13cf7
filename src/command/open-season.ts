import { openBook } from '../finding/book.js';
import type { Problem } from '../problem/problem.js';
import type { Book } from '../record/book.js';
import type { Records } from '../record/records.js';
import { readStore } from '../store/read-store.js';
import { solverFor } from './load-solver.js';
import { sayUnfinished } from './say-unfinished.js';

/** The records of a store, and the book that formulas and findings ask. */
export interface OpenSeason {
  readonly records: Records;
  readonly book: Book;
}

/** The book of a store, or the problems that keep it from being opened; with a solver where the notebooks ask for a plan. */
export async function openSeason(
  store: string,
  notebooks: readonly string[] = [],
): Promise<OpenSeason | { readonly problems: readonly Problem[] }> {
  const read = await readStore(store);
  await sayUnfinished(store);
  if ('problems' in read) return read;
  const { records, sum } = read;
  return { records, book: openBook(records, sum, await solverFor(notebooks)) };
}
