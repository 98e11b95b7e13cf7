import type { ColumnTable } from 'arquero';
import { asksForPlan, loadSolver } from '../command/load-solver.js';
import { bookWith } from '../finding/book/book-with.js';
import { openBook } from '../finding/book.js';
import type { Problem } from '../problem/problem.js';
import type { TableName } from '../record/field.js';
import type { ImportSum } from '../record/file-sum.js';
import { asArqueroTable } from '../store/arquero.js';
import { readStore } from '../store/read-store.js';
import { type ComputedNotebook, computedNotebook, type NotebookText } from './computed-notebook.js';

/** A store, opened for scripts. */
export interface Season {
  /** What the import read, kept and set aside, file by file. */
  readonly sum: ImportSum;
  /**
   * A table of records as an arquero table, nothing copied: missing is null, dates are days since 1970-01-01, moments
   * milliseconds since 1970-01-01T00:00Z; `source_file` and `source_line` tell where each row was read.
   */
  readonly table: (name: TableName) => ColumnTable;
  /** A notebook computed over the records; its mistakes are in its `problems`, and whatever is not touched by them is there. */
  readonly compute: (notebook: NotebookText) => Promise<ComputedNotebook | SeasonProblems>;
}

/** Why a store could not be opened, or a notebook not be computed at all; never empty. */
export interface SeasonProblems {
  readonly problems: readonly Problem[];
  readonly figures?: never;
  readonly table?: never;
}

/** Opens a store that `rampbook import` has written, or says why it cannot be read; throws for no mistake of a user's. */
export async function openSeason(store: string): Promise<Season | SeasonProblems> {
  const read = await readStore(store);
  if ('problems' in read) return read;
  const { records, sum } = read;
  const book = openBook(records, sum);
  return {
    sum,
    table: (name) => asArqueroTable(records[name]),
    compute: async (notebook) =>
      computedNotebook(notebook, asksForPlan(notebook.text) ? bookWith(book, { solver: await loadSolver() }) : book),
  };
}
