import type { Cell } from './cell.js';
import type { DatedCell } from './date-cell.js';

/** Which of several cells that were joined by spaces a fault of their date lies in, from 0. */
export function partAtFault(cell: Cell, parts: readonly string[]): number {
  const at = 'faultAt' in cell ? (cell as DatedCell).faultAt : 0;
  let end = 0;
  for (let part = 0; part < parts.length; part++) {
    end += parts[part]!.length + 1;
    if (at < end) return part;
  }
  return parts.length - 1;
}
