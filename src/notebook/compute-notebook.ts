import type { Definition } from '../formula/definitions.js';
import type { FormulaKind } from '../formula/kind.js';
import type { Evaluated } from '../formula/value/evaluated.js';
import type { Book } from '../record/book.js';
import { writtenIn } from '../record/written-numbers.js';
import { checkFilters } from './check-filters.js';
import { checkCharts, checkProse } from './check-mentions.js';
import { computeAgain } from './compute-again.js';
import { declaredIn } from './declared.js';
import type { Part, Settings } from './document.js';
import type { Block, EvaluatedNotebook } from './evaluated.js';
import { type Item, Making } from './making.js';
import { Memory } from './memory.js';
import { orderByNeed } from './order.js';
import type { ReadNotebook } from './read-document.js';
import type { Knowledge, NotebookWorkings } from './workings.js';

/**
 * A notebook with everything in it computed over a book, in the order of need; `fingerprint` is of its text. With the memory
 * of an earlier computation only what depends on a change is computed; `tables` are the fingerprints of the book's tables.
 */
export function computeNotebook(
  read: ReadNotebook,
  book: Book,
  fingerprint: string,
  memory: Memory = new Memory(),
  tables: ReadonlyMap<string, string> = new Map(),
): NotebookWorkings {
  const { locale } = read.document.settings;
  memory.begin(book, tables, locale);
  return writtenIn(locale, () => computeInLocale(read, book, fingerprint, memory));
}

function computeInLocale(read: ReadNotebook, book: Book, fingerprint: string, memory: Memory): NotebookWorkings {
  const { document } = read;
  const { seed, resamples } = document.settings;
  const problems = [...read.problems];
  const values = new Map<string, Evaluated>();
  const definitions = { inputs: new Set<string>(), made: new Map<string, Definition>(), values };
  const drawn = { count: resamples, seed };
  const environment = { book, known: values, definitions, group: null, resamples: drawn, cache: memory.cache };
  const { file } = document;
  const keys = new Map<string, string>();
  const kinds = new Map<string, FormulaKind>();
  checkFilters(document, book, problems);
  const declared = declaredIn(document, book, problems);
  const ranges = [...declared.values()].flatMap((item) => (item.kind === 'input' ? [item.input] : []));
  const base: Knowledge = { file, book, kinds, values, environment, problems, memory, keys, definitions, ranges };
  const itemOf = new Map<string, Item>();
  const knowledge: Knowledge = { ...base, again: computeAgain(base, declared, itemOf) };
  const made = new Making(knowledge);
  for (const item of declared.values()) if (item.kind === 'input') made.input(item);
  const items = [...declared.values()].filter(({ kind }) => kind !== 'input').map((item) => made.item(item, declared));
  const { names, loops } = orderByNeed(items);
  for (const item of items) itemOf.set(item.name, item);
  made.loops(loops, itemOf);
  for (const name of names) made.compute(itemOf.get(name)!);
  checkProse(document, made, declared, problems);
  checkCharts(document, made, problems);
  problems.sort((a, b) => a.place.line - b.place.line || (a.place.column ?? 0) - (b.place.column ?? 0));
  const notebook = {
    file: document.file,
    name: nameOfFile(document.file),
    title: document.title,
    fingerprint,
    ...localeOf(document.settings),
    blocks: document.parts.map(blockOf),
    inputs: made.inputs,
    selections: made.selections,
    figures: made.figures,
    sheets: made.sheets,
    problems,
  };
  return { notebook, document, settings: document.settings, book, names: made.names, sheets: made.sheetWorkings };
}

/** The locale as a computed notebook has it: left out where nothing is said. */
export function localeOf({ locale }: Settings): Pick<EvaluatedNotebook, 'locale'> {
  return locale === undefined ? {} : { locale };
}

/** The name of a notebook's file without folder and ending: `season`. */
export function nameOfFile(file: string): string {
  return file.replace(/^.*[\\/]/, '').replace(/\.[^.]*$/, '');
}

/** A part of a document as a page shows it. */
export function blockOf(part: Part): Block {
  switch (part.kind) {
    case 'inputs':
    case 'selections':
    case 'figures':
      return { kind: part.kind, names: part.rows.map(({ name }) => name.text) };
    case 'sheet':
      return { kind: 'sheet', name: part.sheet.name.text };
    default:
      return part;
  }
}
