import type { Result } from '../formula/result.js';
import { showFraction, showInterval, showNumber, showResult } from '../notebook/shown.js';
import type { AskedChart } from './chart-kind.js';
import { chartWords } from './chart-words.js';
import type { DataTable } from './drawn.js';
import { keyText } from './key-text.js';
import { keyColumns, whyOf } from './points.js';
import { shownScale } from './shown-scale.js';

/** The numbers a chart shows, a row for each row of its sheet: keys, values, interval, counts, and why one is absent. */
export function dataTable(asked: AskedChart): DataTable {
  const { sheet, columns } = asked;
  const keys = keyColumns(asked);
  const shown = [...columns.values()].filter(
    ({ at }, place, all) => keys.every((key) => key.at !== at) && all.findIndex((other) => other.at === at) === place,
  );
  const value = columns.get('value')!;
  const beside = besideValue.filter(({ text }) => sheet.rows.some(({ cells }) => text(cells[value.at]!, '') !== ''));
  return {
    head: [
      ...keys.map(({ column }) => column.label),
      ...shown.map((placed) => shownScale(sheet, placed).label),
      ...beside.map(({ head }) => head),
    ],
    rows: sheet.rows.map(({ cells }) => [
      ...keys.map(({ at }) => keyText(cells[at]!)),
      ...shown.map(({ at, column }) => numberAlone(cells[at]!, column.shownAs)),
      ...beside.map(({ text }) => text(cells[value.at]!, value.column.shownAs)),
    ]),
  };
}

/** A number without the words of its unit, which the head says. */
function numberAlone(cell: Result, shownAs: string): string {
  return cell.kind === 'number' && cell.value !== null
    ? showNumber(cell.value, shownAs, cell.unit)
    : showResult(cell, shownAs);
}

const besideValue: readonly { readonly head: string; readonly text: (cell: Result, shownAs: string) => string }[] = [
  { head: chartWords.table.interval, text: showInterval },
  { head: chartWords.table.counted, text: (cell) => (cell.kind === 'number' ? showFraction(cell) : '') },
  { head: chartWords.table.why, text: (cell) => whyOf(cell) ?? '' },
];
