import type { Element } from 'hast';
import { h } from 'hastscript';
import { anchor, inWords, slug } from '../anchor.js';
import { tableElement } from '../table.js';
import type { ChangedCell, ChangedSheet } from './comparison.js';
import { comparisonWords as words } from './comparison-words.js';
import { relativeSaid } from './figures-table.js';
import { whyText } from './why-text.js';

/** The most cells of one sheet that a page shows; the command lists all. */
const mostCells = 12;

/** Sheets that are not as they were: rows that came or went, the cells that moved most, and why. */
export function changedSheets(page: string, sheets: readonly ChangedSheet[]): Element[] {
  const table = tableElement({
    id: anchor('sheets', page),
    caption: words.sheets,
    heads: 1,
    head: [words.sheet, words.after, words.why].map((content) => ({ content })),
    rows: sheets.map((sheet) => [
      { content: inWords(sheet.name) },
      { content: sheetSaid(sheet) },
      { content: whyText(sheet) },
    ]),
  });
  return [table, ...sheets.filter(({ cells }) => cells.length > 0).map((sheet) => cellsOf(page, sheet))];
}

/** A sheet's change in one line. */
export function sheetSaid(sheet: ChangedSheet): string {
  const { there, rowsBefore, rowsAfter, rowsAdded, rowsRemoved, cells } = sheet;
  if (there !== 'both') return words.sheetThere[there];
  const beyond = cells.filter((cell) => cell.beyond === 'above' || cell.beyond === 'below').length;
  return [
    words.rows(rowsBefore, rowsAfter),
    ...(rowsAdded.length === 0 ? [] : [words.rowsAdded(rowsAdded)]),
    ...(rowsRemoved.length === 0 ? [] : [words.rowsRemoved(rowsRemoved)]),
    cells.length === 0 ? words.finer : words.cells(cells.length, beyond),
  ].join('; ');
}

function cellsOf(page: string, { name, cells }: ChangedSheet): Element {
  const more = cells.length - mostCells;
  const shown = cells.slice(0, mostCells);
  return h('details', { className: ['numbers'] }, [
    h('summary', [words.cellsOf(inWords(name))]),
    tableElement({
      id: anchor(`cells-${slug(page)}`, name),
      caption: words.cellsOf(inWords(name)),
      heads: 2,
      head: [words.row, words.column, words.before, words.after, words.relative, words.beyond].map((content) => ({
        content,
      })),
      rows: shown.map((cell: ChangedCell) => [
        { content: cell.row },
        { content: inWords(cell.column) },
        { content: cell.before },
        { content: cell.after },
        { content: relativeSaid(cell), order: cell.relative },
        { content: cell.by === null ? '' : words.beyondOf(cell.beyond) },
      ]),
    }),
    ...(more > 0 ? [h('p', { className: ['note'] }, [words.moreCells(more)])] : []),
  ]);
}
