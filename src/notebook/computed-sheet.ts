import type { Problem } from '../problem/problem.js';
import type { SheetDeclaration } from './document.js';
import type { EvaluatedSheet } from './evaluated.js';
import type { SheetWorkings } from './workings.js';

/** A sheet computed, with the values behind its cells. */
export interface ComputedSheet {
  readonly sheet: EvaluatedSheet;
  readonly workings: SheetWorkings;
}

/** A sheet that could not be filled, with the reasons. */
export function emptySheet({ name, sentence }: SheetDeclaration, problems: readonly Problem[]): ComputedSheet {
  return {
    sheet: { name: name.text, sentence, columns: [], rows: [], notes: [], problems, line: name.line },
    workings: { formulas: new Map(), keys: [], cells: [] },
  };
}
