import type { ImportSum } from '../record/file-sum.js';
import type { Records } from '../record/records.js';
import type { Paper } from '../report/style/paper.js';
import type { NotebookPage } from './notebook-page.js';
import type { ChoiceWords } from './read-choice.js';

/** The pages that the threads of a run make between them; each takes the next that nobody has. */
export interface PageWork {
  readonly records: Records;
  readonly sum: ImportSum;
  readonly choice: ChoiceWords;
  readonly paper: Paper | null;
  readonly notebooks: readonly string[];
  /** Places in `notebooks`, in the order in which they are taken. */
  readonly order: readonly number[];
  /** How many of them are taken: one number, in memory that all threads share. */
  readonly taken: Int32Array;
}

/** A page that a thread has made, with the place of its notebook. */
export interface MadePage {
  readonly place: number;
  readonly page: NotebookPage;
}

/** Takes the next notebook; its place, or null where all are taken. */
export function takeNotebook({ order, taken }: Pick<PageWork, 'order' | 'taken'>): number | null {
  return order[Atomics.add(taken, 0, 1)] ?? null;
}
