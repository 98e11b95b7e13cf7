import { type Choice, restrictedBook } from '../../finding/book/restricted-book.js';
import { withChangedInputs } from '../../notebook/changed-inputs.js';
import { blockOf, computeNotebook, localeOf, nameOfFile } from '../../notebook/compute-notebook.js';
import type { NotebookDocument } from '../../notebook/document.js';
import type { EvaluatedNotebook } from '../../notebook/evaluated.js';
import { Memory } from '../../notebook/memory.js';
import { subsetDocument } from '../../notebook/subset-document.js';
import type { NotebookWorkings } from '../../notebook/workings.js';
import type { Problem } from '../../problem/problem.js';
import type { Book } from '../../record/book.js';
import type { CarriedSeason } from './carried-season.js';

/** What a reader chose: values that some fields must have, and other values for some inputs, as a person writes them. */
export interface ReaderChoice {
  readonly only: Choice;
  readonly inputs: ReadonlyMap<string, string>;
}

interface Narrowed {
  readonly book: Book;
  readonly memory: Memory;
}

/** Each name is a turn of its own, so that several choices of inputs are remembered. */
const turnsKept = 400;

/** How many choices of records are remembered with all that was computed for them. */
const mostRemembered = 3;

/**
 * A carried season computed again for what a reader chose, name by name as they are asked for: the same code over the same
 * rows as when the page was made. What does not depend on a change is remembered.
 */
export class Recalculation {
  readonly #season: CarriedSeason;
  readonly #needs: ReadonlyMap<string, readonly string[]>;
  readonly #whole: ReadonlySet<string>;
  readonly #narrowed = new Map<string, Narrowed>();
  #document: NotebookDocument;
  #now: Narrowed;
  #workings: NotebookWorkings;
  #done = new Set<string>();

  constructor(season: CarriedSeason) {
    this.#season = season;
    const { needs, whole, document } = season.head;
    this.#needs = new Map(needs);
    this.#whole = new Set(Object.values(whole).flatMap((values) => values.map(({ name }) => name)));
    this.#document = document;
    this.#now = { book: season.book, memory: new Memory(turnsKept) };
    this.#workings = this.#nothingYet();
    this.choose({ only: new Map(), inputs: new Map() });
  }

  /** The names that show all records whatever is chosen. */
  get whole(): ReadonlySet<string> {
    return this.#whole;
  }

  /** What has been computed for the choice. */
  get workings(): NotebookWorkings {
    return this.#workings;
  }

  /** What is wrong with the inputs chosen, and what follows from it. */
  get problems(): readonly Problem[] {
    return this.#workings.notebook.problems;
  }

  /** Begins a choice: nothing is computed for it yet. */
  choose({ only, inputs }: ReaderChoice): void {
    const key = JSON.stringify([...only].sort());
    const kept = this.#narrowed.get(key) ?? {
      book: restrictedBook(this.#season.book, only),
      memory: new Memory(turnsKept),
    };
    this.#narrowed.delete(key);
    this.#narrowed.set(key, kept);
    if (this.#narrowed.size > mostRemembered) this.#narrowed.delete(this.#narrowed.keys().next().value!);
    this.#now = kept;
    this.#document = withChangedInputs(this.#season.head.document, inputs);
    this.#done = new Set();
    this.#workings = this.#nothingYet();
    this.compute([]);
  }

  /** Computes some names with all that they stand on. */
  compute(names: readonly string[]): void {
    const wanted = new Set(names.filter((name) => !this.#whole.has(name)));
    for (const name of wanted) {
      for (const need of this.#needs.get(name) ?? []) if (!this.#whole.has(need)) wanted.add(need);
    }
    if (names.length > 0 && [...wanted].every((name) => this.#done.has(name))) return;
    for (const name of wanted) this.#done.add(name);
    const subset = subsetDocument(this.#document, wanted);
    const { book, memory } = this.#now;
    const read = { document: subset, problems: [], written: [], head: null };
    const made = computeNotebook(read, book, this.#season.head.fingerprint, memory);
    this.#workings = this.#with(made);
  }

  #with(made: NotebookWorkings): NotebookWorkings {
    const { notebook, names, sheets, ...rest } = this.#workings;
    const problems = [...notebook.problems, ...made.notebook.problems];
    const seen = new Set<string>();
    return {
      ...rest,
      notebook: {
        ...notebook,
        inputs: made.notebook.inputs,
        selections: new Map([...notebook.selections, ...made.notebook.selections]),
        figures: new Map([...notebook.figures, ...made.notebook.figures]),
        sheets: new Map([...notebook.sheets, ...made.notebook.sheets]),
        problems: problems.filter((problem) => {
          const key = JSON.stringify(problem);
          return !seen.has(key) && seen.add(key) !== null;
        }),
      },
      names: new Map([...names, ...made.names]),
      sheets: new Map([...sheets, ...made.sheets]),
    };
  }

  #nothingYet(): NotebookWorkings {
    const { head } = this.#season;
    const { file, title, settings, parts } = this.#document;
    const byName = <Value extends { readonly name: string }>(values: readonly Value[]) =>
      new Map(values.map((value) => [value.name, value]));
    const notebook: EvaluatedNotebook = {
      file,
      name: nameOfFile(file),
      title,
      fingerprint: head.fingerprint,
      ...localeOf(settings),
      blocks: parts.map(blockOf),
      inputs: new Map(),
      selections: byName(head.whole.selections),
      figures: byName(head.whole.figures),
      sheets: byName(head.whole.sheets),
      problems: [],
    };
    const { book } = this.#now;
    return { notebook, document: this.#document, settings, book, names: new Map(), sheets: new Map() };
  }
}
