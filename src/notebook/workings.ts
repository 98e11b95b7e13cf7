import type { Definition, Definitions } from '../formula/definitions.js';
import type { Environment } from '../formula/environment.js';
import type { FormulaKind } from '../formula/kind.js';
import type { Formula } from '../formula/tree.js';
import type { Evaluated } from '../formula/value/evaluated.js';
import type { Problem } from '../problem/problem.js';
import type { Book } from '../record/book.js';
import type { InputRow, NotebookDocument, Settings } from './document.js';
import type { EvaluatedNotebook } from './evaluated.js';
import type { FoundRecords } from './found-records.js';
import type { Memory } from './memory.js';

/** A cell of a sheet with its value and the row it stands in: what a trace needs. */
export interface SheetWorkings {
  readonly formulas: ReadonlyMap<string, Formula>;
  /** Names of this notebook that its rows or columns use. */
  readonly needs: readonly string[];
  /** Names that the formula of its rows uses. */
  readonly ofRows: readonly string[];
  /** The codes of each row's keys, in the sheet's order. */
  readonly keys: readonly (readonly (string | number | null)[])[];
  /** The values of each row's columns, by name. */
  readonly cells: readonly ReadonlyMap<string, Evaluated>[];
  /** The records that each row's numbers tell of, by column, in the sheet's order, for a sheet of a finding; null where it does not say. */
  readonly records?: () => readonly ReadonlyMap<string, readonly FoundRecords[]>[] | null;
}

/** How one name of a notebook was computed. */
export interface NameWorkings {
  readonly formula: Formula;
  readonly value: Evaluated;
  /** Names of this notebook that its formula uses. */
  readonly needs: readonly string[];
}

/** A notebook computed: what a page shows, and the values behind it for tracing. */
export interface NotebookWorkings {
  readonly notebook: EvaluatedNotebook;
  readonly document: NotebookDocument;
  readonly settings: Settings;
  readonly book: Book;
  readonly names: ReadonlyMap<string, NameWorkings>;
  readonly sheets: ReadonlyMap<string, SheetWorkings>;
}

/** What is known while a notebook is being computed; it grows name by name. */
export interface Knowledge {
  readonly file: string;
  readonly book: Book;
  readonly kinds: Map<string, FormulaKind>;
  readonly values: Map<string, Evaluated>;
  readonly environment: Environment;
  readonly problems: Problem[];
  readonly memory: Memory;
  /** The key in the memory of each name computed so far. */
  readonly keys: Map<string, string>;
  /** How each name is made, so that a figure can be asked for with another input. */
  readonly definitions: GrowingDefinitions;
  /** The inputs as written, with the ranges they may have. */
  readonly ranges?: readonly InputRow[];
  /** Computes again what another value of an input would make of a figure, sheets included; absent while it does so. */
  readonly again?: ComputedAgain;
}

/** Figures as they would be with another value of an input, written as in its cell. */
export interface ComputedAgain {
  readonly reaches: (input: string, figure: string) => boolean;
  readonly with: (input: string, written: string, figure: string) => Evaluated | undefined;
}

/** The definitions of a notebook while it is being computed. */
export interface GrowingDefinitions extends Definitions {
  readonly inputs: Set<string>;
  readonly made: Map<string, Definition>;
}
