import type { Element } from 'hast';
import { h } from 'hastscript';
import type { EvaluatedFigure, EvaluatedSheet, SheetColumn } from '../notebook/evaluated.js';
import type { Trace } from '../notebook/trace.js';
import { anchor, inWords } from './anchor.js';
import { definitionList, type Entry } from './definition-list.js';
import { resultEntries } from './result-entries.js';
import { traceEntries } from './trace-entries.js';
import { words } from './words.js';

/** How each figure of a table was made, together under one head. */
export function figureAccounts(figures: readonly EvaluatedFigure[], traces: ReadonlyMap<string, Trace>): Element {
  const accounts = figures.map((figure) => figureAccount(figure, traces.get(figure.name) ?? null));
  return h('details', { className: ['accounts'] }, [h('summary', [words.accounts]), ...accounts]);
}

/**
 * How a figure was made. The address stands on what is inside, so that a browser that follows it opens the account
 * without a script.
 */
function figureAccount(figure: EvaluatedFigure, trace: Trace | null): Element {
  const entries: Entry[] = [
    [words.formula, h('code', [figure.formula])],
    ...resultEntries(figure.result, figure.shownAs),
    ...(trace === null ? [] : traceEntries(trace)),
  ];
  return h('details', { className: ['account'] }, [
    h('summary', [words.accountOf(inWords(figure.name))]),
    h('div', { id: anchor('account', figure.name) }, [definitionList(entries)]),
  ]);
}

/** How the columns of a sheet were made: formula and meaning of each, and what was left out. */
export function sheetAccount(sheet: EvaluatedSheet, file: string, isTraced = true): Element {
  const traced = isTraced ? sheet.columns.find(({ role }) => role === 'value') : undefined;
  return h('details', { className: ['account'] }, [
    h('summary', [words.columnsOf(inWords(sheet.name))]),
    h('div', { id: anchor('account', sheet.name) }, [
      h('p', [h('code', [sheet.sentence])]),
      h(
        'dl',
        sheet.columns.flatMap((column) => [
          h('dt', [column.label]),
          ...(column.formula === '' ? [] : [h('dd', [h('code', [column.formula])])]),
          ...(column.meaning === '' ? [] : [h('dd', [column.meaning])]),
          ...(column.formula === '' && column.meaning === '' ? [h('dd', [inWords(column.name)])] : []),
          ...cautionsOf(sheet, column).map((caution) => h('dd', [`${words.caution}: ${caution}`])),
        ]),
      ),
      ...(traced === undefined
        ? []
        : [h('p', [words.traceCellSays]), h('p', [h('code', [words.traceCell(file, sheet.name, traced.name)])])]),
    ]),
  ]);
}

/** The cautions of a column's cells, each once with how many of its cells carry it. */
function cautionsOf(sheet: EvaluatedSheet, column: SheetColumn): string[] {
  const at = sheet.columns.indexOf(column);
  const cells = new Map<string, number>();
  for (const row of sheet.rows) {
    const cell = row.cells[at]!;
    if (cell.kind !== 'number') continue;
    for (const caution of cell.cautions) cells.set(caution, (cells.get(caution) ?? 0) + 1);
  }
  return [...cells].map(([caution, times]) => words.cautionIn(caution, times, sheet.rows.length));
}
