import type { Result } from '../../formula/result.js';
import { everyRowOf } from '../../record/every-row.js';
import { isOfAccount } from '../account-notes.js';
import type { SheetDeclaration } from '../document.js';
import type { EvaluatedNotebook, EvaluatedSheet, SheetRow } from '../evaluated.js';
import { isWithheld } from '../shown.js';
import type { NotebookWorkings } from '../workings.js';
import { cellKey } from './told-cell.js';
import { toldCells } from './told-cells.js';
import { isFew } from './told-value.js';
import { wholeSheets } from './whole-sheets.js';
import { withheldCells } from './withheld-cells.js';

/** A notebook as the public may see it, with how many of its numbers are withheld. */
export interface WithheldNotebook {
  readonly notebook: EvaluatedNotebook;
  /** Figures, counts of selections and cells of sheets, and how many of them are withheld. */
  readonly cells: number;
  readonly withheld: number;
  /** Sheets of which nothing is shown. */
  readonly sheets: readonly string[];
}

/**
 * A computed notebook as a page for the public shows it: what tells of fewer craft than `fewest`, or from which such a number
 * could be worked out, is withheld and says so. Rows whose order would tell stand last; sentences with a number so small are
 * left out.
 */
export function withheldNotebook(workings: NotebookWorkings, fewest: number): WithheldNotebook {
  const { notebook, document, book } = workings;
  const whole = wholeSheets(workings);
  const told = toldCells(workings, whole.unknown, fewest);
  const allRows = [...book.tables.values()].map(({ name, rowCount }) => {
    return { table: name, rows: everyRowOf(rowCount) };
  });
  const withheld = withheldCells(told, allRows, fewest);
  const why = `it tells of fewer than ${fewest} craft, or such a number could be worked out from it`;
  const inPlace: Result = { kind: 'missing', why, withheld: true };
  const shown = (key: string, result: Result): Result => (withheld.has(key) ? inPlace : withoutFew(result, fewest));
  const declared = new Map(
    document.parts.flatMap((part) => (part.kind === 'sheet' ? [[part.sheet.name.text, part.sheet] as const] : [])),
  );
  const sheets = [...notebook.sheets].map(([name, sheet]): [string, EvaluatedSheet] => {
    const rows = sheet.rows.map(
      ({ cells }, row): SheetRow => ({
        cells: cells.map((cell, at) => {
          const { name: column, role } = sheet.columns[at]!;
          return role === 'key' ? cell : shown(cellKey(name, column, row), cell);
        }),
      }),
    );
    const own = { ...sheet, rows, notes: sheet.notes.filter((note) => !tellsOfRecords(note)) };
    const { order, maker } = declared.get(name)!;
    if (whole.withheld.has(name) || endTells(own, order)) return [name, nothingOf(sheet)];
    return [name, order === null && maker.kind === 'each' ? own : { ...own, rows: lastWhere(own, order) }];
  });
  const without = sheets.flatMap(([name, { withheld: isWithheld }]) => (isWithheld === true ? [name] : []));
  const sizes = [...notebook.sheets.values()].map(({ name, rows, columns }) => {
    const cells = rows.length * columns.filter(({ role }) => role === 'value').length;
    const hidden = [...withheld].filter((key) => key.startsWith(`[${JSON.stringify(name)},`)).length;
    return { cells, withheld: without.includes(name) ? cells : hidden };
  });
  const alone = [...workings.names.keys()];
  return {
    notebook: {
      ...notebook,
      selections: new Map(
        [...notebook.selections].map(([name, selection]) => [
          name,
          withheld.has(name) ? { ...selection, rows: null } : selection,
        ]),
      ),
      figures: new Map(
        [...notebook.figures].map(([name, figure]) => [name, { ...figure, result: shown(name, figure.result) }]),
      ),
      sheets: new Map(sheets),
    },
    cells: alone.length + sizes.reduce((sum, { cells }) => sum + cells, 0),
    withheld: alone.filter((name) => withheld.has(name)).length + sizes.reduce((sum, size) => sum + size.withheld, 0),
    sheets: without,
  };
}

function nothingOf(sheet: EvaluatedSheet): EvaluatedSheet {
  return { ...sheet, rows: [], notes: [], withheld: true };
}

/** A result without sentences that hold a number too small to be told. */
function withoutFew(result: Result, fewest: number): Result {
  if (result.kind === 'missing') return tellsFew(result.why, fewest) ? { ...result, why: '' } : result;
  if (result.kind !== 'number') return result;
  const why = result.why !== null && tellsFew(result.why, fewest) ? null : result.why;
  return { ...result, why, cautions: result.cautions.filter((caution) => !tellsFew(caution, fewest)) };
}

/** Whether a sentence holds a whole number that is too small to be told. */
function tellsFew(sentence: string, fewest: number): boolean {
  return [...sentence.matchAll(/(?<![\d.,:§-])\d+(?![\d.,:]*\d)/g)].some(([number]) => isFew(Number(number), fewest));
}

/** Whether a note of a sheet tells of a number of records, as those do that say how many were left out. */
function tellsOfRecords(note: string): boolean {
  return !isOfAccount(note) && !/^\d+ of \d+ rows are shown\.$/.test(note) && /\d/.test(note);
}

/** Whether which rows are left out at a sheet's end would tell: only the highest of shown counts may be picked. */
function endTells({ columns, rows }: EvaluatedSheet, order: SheetDeclaration['order']): boolean {
  if (order === null || order.most === null) return false;
  const at = columns.findIndex(({ name }) => name === order.column.text);
  const isCount = (cell: Result | undefined): boolean =>
    cell?.kind === 'number' && cell.denominator === null && Number.isInteger(cell.value);
  return columns[at]?.role !== 'key' && (order.from === 'lowest' || !rows.every(({ cells }) => isCount(cells[at])));
}

/** Rows that are withheld where their order comes from, anywhere in a finding's own order, behind the others by their heads. */
function lastWhere({ rows, columns }: EvaluatedSheet, order: SheetDeclaration['order']): readonly SheetRow[] {
  const at = columns.findIndex(({ name }) => name === order?.column.text);
  const isLast = ({ cells }: SheetRow): boolean => (order === null ? cells.some(isWithheld) : isWithheld(cells[at]));
  const headOf = ({ cells }: SheetRow): string =>
    JSON.stringify(cells.map((cell, place) => (columns[place]!.role === 'key' ? cell : null)));
  const last = rows.filter(isLast).sort((one, other) => (headOf(one) < headOf(other) ? -1 : 1));
  return [...rows.filter((row) => !isLast(row)), ...last];
}
