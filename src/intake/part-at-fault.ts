import type { Cell } from './cell.js';
import type { DatedCell } from './date-cell.js';

/** Which of several cells that were joined by spaces a fault of their date lies in, from 0; by how many bytes each has. */
export function partAtFault(cell: Cell, lengths: readonly number[]): number {
  const at = 'faultAt' in cell ? (cell as DatedCell).faultAt : 0;
  let end = 0;
  for (const [part, length] of lengths.entries()) {
    end += length + 1;
    if (at < end) return part;
  }
  return lengths.length - 1;
}
