import { openBook } from '../finding/book.js';
import type { Problem } from '../problem/problem.js';
import type { Book } from '../record/book.js';
import { readStore } from '../store/read-store.js';
import { solverFor } from './load-solver.js';
import { sayUnfinished } from './say-unfinished.js';

/** The book of a store, or the problems that keep it from being opened; with a solver where the notebooks ask for a plan. */
export async function openSeason(
  store: string,
  notebooks: readonly string[] = [],
): Promise<{ readonly book: Book } | { readonly problems: readonly Problem[] }> {
  const read = await readStore(store);
  await sayUnfinished(store);
  return 'problems' in read ? read : { book: openBook(read.records, read.sum, await solverFor(notebooks)) };
}
