import type { Result } from '../formula/result.js';
import { nearestName } from '../problem/nearest.js';
import type { Problem } from '../problem/problem.js';
import type { SheetOrder } from './document.js';
import type { SheetColumn } from './evaluated.js';
import { cellProblem } from './formula-cell.js';

/** Rows in the order a sheet asks for, those without a value last; equal ones keep their order. */
export function orderRows<Row extends { readonly results: readonly Result[] }>(
  rows: readonly Row[],
  columns: readonly SheetColumn[],
  order: SheetOrder | null,
  file: string,
): { readonly rows: readonly Row[]; readonly note: string | null; readonly problems: readonly Problem[] } {
  if (order === null) return { rows, note: null, problems: [] };
  const at = columns.findIndex(({ name }) => name === order.column.text);
  if (at < 0) {
    const names = columns.map(({ name }) => name);
    const nearest = nearestName(order.column.text, names);
    const remedy = nearest === null ? `Columns are ${names.join(', ')}.` : `Did you mean "${nearest}"?`;
    const problem = cellProblem(file, order.column, 'unknown-column', 'a column of this sheet', remedy);
    return { rows, note: null, problems: [problem] };
  }
  const sign = order.from === 'highest' ? -1 : 1;
  const sorted = [...rows].sort((a, b) => {
    const left = sortable(a.results[at]);
    const right = sortable(b.results[at]);
    if (left === null || right === null) return Number(left === null) - Number(right === null);
    if (typeof left === 'string' || typeof right === 'string')
      return sign * (String(left) < String(right) ? -1 : String(left) > String(right) ? 1 : 0);
    return sign * (left - right);
  });
  const most = order.most ?? sorted.length;
  const note = sorted.length > most ? `${most} of ${sorted.length} rows are shown.` : null;
  return { rows: sorted.slice(0, most), note, problems: [] };
}

function sortable(result: Result | undefined): number | string | null {
  if (result === undefined) return null;
  if (result.kind === 'number') return result.value;
  if (result.kind === 'date') return result.day;
  return result.kind === 'text' ? result.text : null;
}
