import { restrictedBook } from '../finding/book/restricted-book.js';
import { watchedBook } from '../finding/book/watched-book.js';
import type { NotebookWorkings } from '../notebook/workings.js';
import type { Problem } from '../problem/problem.js';
import type { Book } from '../record/book.js';
import { openNotebook } from './open-notebook.js';
import { openSeason } from './open-season.js';
import { type ChoiceWords, readChoice, unknownInputs } from './read-choice.js';

/** A notebook computed for what was chosen of a store, and the sentences that say so; null where nothing was chosen. */
export interface ChosenNotebook {
  readonly workings: NotebookWorkings;
  readonly said: readonly string[] | null;
  /** The records that were chosen. */
  readonly records: Book;
}

/** Computes a notebook over a store for what was chosen, as a page of that choice shows it, or the problems that prevent it. */
export async function openChosen(
  file: string,
  store: string,
  words: ChoiceWords,
): Promise<ChosenNotebook | { readonly problems: readonly Problem[] }> {
  const season = await openSeason(store, [file]);
  if ('problems' in season) return season;
  const choice = readChoice(words, season.book);
  if ('problems' in choice) return choice;
  const records = restrictedBook(season.book, choice.only);
  const { book, asked } = watchedBook(records, () => '');
  const workings = openNotebook(file, book, { inputs: choice.inputs });
  if ('problem' in workings) return { problems: [workings.problem] };
  const inputs = workings.written;
  const unknown = unknownInputs(choice, file, inputs.keys());
  if (unknown.length > 0) return { problems: unknown };
  const tables = [...asked.keys()].map((name) => book.tables.get(name)!);
  return { workings, said: choice.said(inputs, tables), records };
}
