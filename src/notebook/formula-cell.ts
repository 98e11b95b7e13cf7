import { checkFormula } from '../formula/check.js';
import type { FormulaKind } from '../formula/kind.js';
import { parseFormula } from '../formula/parse.js';
import type { SheetScope } from '../formula/scope.js';
import type { Formula } from '../formula/tree.js';
import { describeUnit } from '../formula/unit/unit.js';
import { nearestName } from '../problem/nearest.js';
import type { Problem } from '../problem/problem.js';
import { inDocument } from '../problem/problem.js';
import type { Cell } from './document.js';
import { formatNames, isFormat, misfit } from './shown.js';
import type { Knowledge } from './workings.js';

/** A formula read from a cell, or the problems with it. */
export type ReadFormula = { readonly tree: Formula } | { readonly problems: readonly Problem[] };

/** The formula that a cell holds. */
export function formulaIn(file: string, cell: Cell): ReadFormula {
  return parseFormula(cell.text, { file, line: cell.line, column: cell.column });
}

/** A problem with the text of a cell that fails what it belongs to. */
export function cellProblem(file: string, cell: Cell, code: string, wanted: string, remedy: string): Problem {
  return {
    code,
    severity: 'sets aside',
    place: inDocument(file, cell.line, cell.column),
    seen: cell.text,
    wanted,
    remedy,
  };
}

/** What a formula gives among the names known so far, with what is wrong with it. */
export function checkCell(
  formula: Formula,
  knowledge: Knowledge,
  sheet: SheetScope | null,
  columns: ReadonlyMap<string, FormulaKind> = new Map(),
): { readonly kind: FormulaKind; readonly problems: readonly Problem[] } {
  const { book, kinds, definitions } = knowledge;
  if (columns.size === 0) return checkFormula(formula, { book, known: kinds, sheet, definitions });
  // A column that has a figure's name stands before it, and a column cannot be asked for with another input.
  const made = new Map([...definitions.made].filter(([name]) => !columns.has(name)));
  const known = new Map([...kinds, ...columns]);
  return checkFormula(formula, { book, known, sheet, definitions: { ...definitions, made } });
}

/** What is wrong with a `shown as` cell for values of that kind; empty when it fits. */
export function checkShownAs(file: string, shownAs: Cell, kind: FormulaKind): readonly Problem[] {
  if (!isFormat(shownAs.text)) {
    const nearest = nearestName(shownAs.text, formatNames());
    const remedy = nearest === null ? `Ways of showing are ${formatNames().join('; ')}.` : `Did you mean "${nearest}"?`;
    return [cellProblem(file, shownAs, 'unknown-format', 'a way of showing a value', remedy)];
  }
  if (kind.kind !== 'number') return [];
  const wrong = misfit(shownAs.text, describeUnit(kind.unit));
  if (wrong === null) return [];
  return [cellProblem(file, shownAs, 'wrong-format', wrong, 'Show it another way, or correct the formula.')];
}
