import { addCellAccounts } from './cell-accounts.js';
import { addCopying } from './copy-table.js';
import { addSorting } from './sort-table.js';

/** Gives everything under a root what the script adds to it: accounts of cells, sorting and copying. */
export function readyParts(root: ParentNode): void {
  addCellAccounts(root);
  addSorting(root);
  addCopying(root);
}
