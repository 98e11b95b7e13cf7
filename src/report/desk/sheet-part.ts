import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Cell } from '../../notebook/document.js';
import type { EvaluatedSheet, SheetColumn } from '../../notebook/evaluated.js';
import { unitInHead } from '../../notebook/shown.js';
import type { WrittenPart } from '../../notebook/written.js';
import { anchor, headed, inWords } from '../anchor.js';
import { askedCells } from '../cell-accounts.js';
import { words } from '../words.js';
import { cellSlot, type Holds, slotElement } from './slot.js';
import { deskWords } from './words.js';
import { cellWorth } from './worth.js';
import { type ProblemsByPlace, wrongElements } from './wrong.js';

/** A sheet of no more rows stands whole; a longer one scrolls within itself, so that the next place is near. */
const rowsInSight = 16;

/** A sheet: the sentence that declares it, its columns with their formulas at the head, and its rows. */
export function sheetPart(
  sheet: EvaluatedSheet,
  sentence: string,
  { first, last, table }: WrittenPart,
  problems: ProblemsByPlace,
): readonly Element[] {
  const written = (table ?? []).slice(1);
  const heads = table?.[0] ?? [];
  const sentenceLines = sentence.split('\n').length;
  const columns = columnsOf(sheet, written);
  const keys = columns.filter(({ name }) => name === null).length;
  const head = columns.map((column) => headCell(column, heads, first, problems));
  const body = sheet.rows.map(({ cells }) =>
    h(
      'tr',
      columns.map((column, at) => bodyCell(column, cells, at < keys)),
    ),
  );
  const slot = slotElement({
    holds: 'sheet',
    label: deskWords.sheet,
    line: 0,
    last: sentenceLines - 1,
    column: 1,
    text: sentence,
    shown: [sentence],
    at: null,
  });
  const rest = wrongElements(problems.onLines(first, last));
  return [
    h('p', { className: ['sentence'] }, [slot]),
    ...rest,
    ...(columns.length === 0
      ? []
      : [
          // Where a place in the head of the table is opened: a column is too narrow to write in.
          h('div', { className: ['bench'], 'data-holds': 'bench' }),
          h(
            'div',
            {
              id: anchor('sheet', sheet.name),
              className: sheet.rows.length > rowsInSight ? ['scroll', 'long'] : ['scroll'],
              role: 'group',
              ariaLabel: deskWords.rowsShown(inWords(sheet.name)),
              tabIndex: 0,
            },
            [
              h('table', { className: sheet.rows.length > 1 ? ['sortable'] : undefined }, [
                h('thead', [h('tr', head)]),
                h('tbody', body),
              ]),
            ],
          ),
        ]),
    ...(sheet.rows.length === 0 ? [] : cellsAccount(sheet, columns)),
    ...(columns.length > 0 && sheet.rows.length === 0 ? [h('p', { className: ['note'] }, [deskWords.empty])] : []),
    ...notes(sheet.notes),
  ];
}

interface DeskColumn {
  readonly column: SheetColumn | null;
  /** Its place in the rows of the computed sheet; −1 where it could not be computed. */
  readonly at: number;
  /** The row of the table that declares it, with its place among them; null for keys and for what a finding brings. */
  readonly name: Cell | null;
  readonly cells: readonly Cell[];
  readonly row: number;
}

/** The columns in order: keys and a finding's own, then those that are written, whether they could be computed or not. */
function columnsOf(sheet: EvaluatedSheet, written: readonly (readonly Cell[])[]): readonly DeskColumn[] {
  const names = new Set(written.map((row) => row[0]?.text ?? ''));
  const given = sheet.columns.flatMap((column, at): DeskColumn[] =>
    column.formula === '' && (column.role === 'key' || !names.has(column.name))
      ? [{ column, at, name: null, cells: [], row: -1 }]
      : [],
  );
  const own = written.map((cells, row): DeskColumn => {
    const at = sheet.columns.findIndex(({ name, role }) => role === 'value' && name === cells[0]!.text);
    return { column: sheet.columns[at] ?? null, at, name: cells[0]!, cells, row };
  });
  return [...given, ...own];
}

function headCell(
  { column, name, cells, row }: DeskColumn,
  heads: readonly Cell[],
  first: number,
  problems: ProblemsByPlace,
): Element {
  if (name === null) {
    const unit = column!.role === 'key' ? '' : unitInHead(column!.shownAs, '');
    return h('th', { scope: 'col' }, [headed(column!.label), h('span', { className: ['small'] }, [unit])]);
  }
  const label = inWords(name.text);
  const place = (head: string, holds: Holds, words: string, empty: string, number: number): Element[] => {
    const cell = cells[heads.findIndex(({ text }) => text === head)];
    if (cell === undefined) return [];
    const shown = cell.text === '' ? [h('em', [empty])] : [holds === 'formula' ? h('code', [cell.text]) : cell.text];
    const slot = cellSlot(cell, first, { holds, label: `${words} of ${label}`, shown, at: [number, row] });
    return [slotElement(slot), ...wrongElements(problems.inCell(cell))];
  };
  const called = cellSlot(name, first, { holds: 'name', label: deskWords.name, shown: [headed(label)], at: [0, row] });
  const content: ElementContent[] = [
    slotElement(called),
    ...wrongElements(problems.inCell(name)),
    ...place('formula', 'formula', deskWords.formula, deskWords.noFormula, 1),
    ...place('shown as', 'shown as', deskWords.shownAs, deskWords.shownByKind, 2),
    ...wrongElements(problems.onLines(name.line, name.line)),
  ];
  return h('th', { scope: 'col', className: ['row', 'number'], 'data-line': String(name.line - first) }, content);
}

function bodyCell({ column, at }: DeskColumn, cells: EvaluatedSheet['rows'][number]['cells'], isKey: boolean): Element {
  const result = at < 0 ? undefined : cells[at];
  if (result === undefined || column === null) return h('td', { className: ['number'] }, [h('em', [words.noValue])]);
  const content = cellWorth(result, column.shownAs, column.role === 'key');
  if (isKey && column.role === 'key') return h('th', { scope: 'row' }, content);
  const order = result.kind === 'number' ? result.value : result.kind === 'date' ? result.day : null;
  return h(
    'td',
    { className: result.kind === 'number' ? ['number'] : [], dataOrder: order === null ? undefined : String(order) },
    content,
  );
}

/** Where the page's script shows how a cell was made, when it is clicked or chosen; hidden where there is no script. */
function cellsAccount(sheet: EvaluatedSheet, columns: readonly DeskColumn[]): readonly Element[] {
  const values = columns.flatMap(({ column }, place) =>
    column?.role === 'value' ? [{ name: column.name, label: column.label, place }] : [],
  );
  if (values.length === 0) return [];
  const account = h('details', { className: ['account'], hidden: true }, [h('summary', [deskWords.cells]), h('div')]);
  return [account, askedCells(sheet.name, values)];
}

function notes(said: readonly string[]): readonly Element[] {
  if (said.length === 0) return [];
  return [
    h('details', [h('summary', [deskWords.counts]), ...said.map((note) => h('p', { className: ['note'] }, [note]))]),
  ];
}
