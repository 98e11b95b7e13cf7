import { showFraction, showInterval, showResult } from '../notebook/shown.js';
import type { AskedChart } from './chart-kind.js';
import type { DataTable } from './drawn.js';
import { keyText } from './key-text.js';
import { keyColumns, whyOf } from './points.js';

/** The numbers a chart shows, a row for each row of its sheet: keys, values, interval, counts, and why one is absent. */
export function dataTable(asked: AskedChart): DataTable {
  const { sheet, columns } = asked;
  const keys = keyColumns(asked);
  const shown = [...new Set([...columns.values()].map(({ at }) => at))].filter((at) =>
    keys.every((key) => key.at !== at),
  );
  const value = columns.get('value')!;
  const beside = besideValue.filter(({ text }) => sheet.rows.some(({ cells }) => text(cells[value.at]!, '') !== ''));
  return {
    head: [
      ...keys.map(({ column }) => column.label),
      ...shown.map((at) => sheet.columns[at]!.label),
      ...beside.map(({ head }) => head),
    ],
    rows: sheet.rows.map(({ cells }) => [
      ...keys.map(({ at }) => keyText(cells[at]!)),
      ...shown.map((at) => showResult(cells[at]!, sheet.columns[at]!.shownAs)),
      ...beside.map(({ text }) => text(cells[value.at]!, value.column.shownAs)),
    ]),
  };
}

type CellText = (cell: Parameters<typeof showResult>[0], shownAs: string) => string;

const besideValue: readonly { readonly head: string; readonly text: CellText }[] = [
  { head: 'Interval', text: showInterval },
  { head: 'Counted', text: (cell) => (cell.kind === 'number' ? showFraction(cell) : '') },
  { head: 'Why not', text: (cell) => whyOf(cell) ?? '' },
];
