import { createHash } from 'node:crypto';
import { readChoice, unknownInputs } from '../command/read-choice.js';
import { restrictedBook } from '../finding/book/restricted-book.js';
import { withChangedInputs } from '../notebook/changed-inputs.js';
import { computeNotebook } from '../notebook/compute-notebook.js';
import type { EvaluatedNotebook } from '../notebook/evaluated.js';
import { readDocument } from '../notebook/read-document.js';
import { writtenInputs } from '../notebook/written-inputs.js';
import type { Problem } from '../problem/problem.js';
import type { Book } from '../record/book.js';

/** A notebook to compute: its text, and what to count in it. */
export interface NotebookText {
  /** The name that problems are told with, such as `season.md`. */
  readonly name: string;
  readonly text: string;
  /** Counts only records with these values, field by field: `{ station: 'heron-point' }`. */
  readonly only?: Readonly<Record<string, string>>;
  /** Other values for inputs, as they would be written in the notebook: `{ this_season: '2024' }`. */
  readonly inputs?: Readonly<Record<string, string>>;
}

/** Every input, selection, figure and sheet of a notebook by name, and every mistake in it. */
export type ComputedNotebook = Pick<
  EvaluatedNotebook,
  'title' | 'fingerprint' | 'inputs' | 'selections' | 'figures' | 'sheets' | 'problems'
>;

/** A notebook computed over a book as `rampbook evaluate` does; a choice that the records or the text do not have is all there is then. */
export function computedNotebook(
  { name, text, only = {}, inputs = {} }: NotebookText,
  book: Book,
): ComputedNotebook | { readonly problems: readonly Problem[]; readonly figures?: never } {
  const choice = readChoice({ only: words(only), with: words(inputs) }, book);
  if ('problems' in choice) return choice;
  const read = readDocument(name, text);
  const unknown = unknownInputs(choice, name, writtenInputs(read.document).keys());
  if (unknown.length > 0) return { problems: unknown };
  const changed = { ...read, document: withChangedInputs(read.document, choice.inputs) };
  const fingerprint = createHash('sha256').update(text).digest('hex');
  const { notebook } = computeNotebook(changed, restrictedBook(book, choice.only), fingerprint);
  const { title, selections, figures, sheets, problems } = notebook;
  return { title, fingerprint, inputs: notebook.inputs, selections, figures, sheets, problems };
}

function words(pairs: Readonly<Record<string, string>>): readonly string[] {
  return Object.entries(pairs).map(([name, value]) => `${name}=${value}`);
}
