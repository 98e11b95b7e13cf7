import type { DrawnRows } from '../formula/value/account.js';
import type { SheetValue } from '../formula/value/evaluated.js';
import type { Problem } from '../problem/problem.js';
import type { BookTable } from '../record/book.js';
import type { SheetDeclaration } from './document.js';
import type { EvaluatedSheet } from './evaluated.js';
import type { SheetWorkings } from './workings.js';

/** The rows that a sheet is of. */
export interface SheetRows {
  readonly table: BookTable;
  readonly rows: Uint32Array;
  /** What decided which rows these are and comes from records itself. */
  readonly decidedBy: readonly string[];
  /** How that decides them in every resample; null where nothing does, or it cannot be told. */
  readonly drawn: DrawnRows | null;
  /** The rows' key in the memory. */
  readonly key: string;
}

/** A sheet computed, with the values behind its cells. */
export interface ComputedSheet {
  readonly sheet: EvaluatedSheet;
  readonly workings: SheetWorkings;
  /** The sheet as formulas ask it, and its key in the memory; null where it could not be filled. */
  readonly asked: { readonly value: SheetValue; readonly key: string } | null;
}

/** A sheet that could not be filled, with the reasons. */
export function emptySheet({ name, sentence }: SheetDeclaration, problems: readonly Problem[]): ComputedSheet {
  return {
    sheet: { name: name.text, sentence, columns: [], rows: [], notes: [], problems, line: name.line },
    workings: { formulas: new Map(), needs: [], ofRows: [], keys: [], cells: [] },
    asked: null,
  };
}
