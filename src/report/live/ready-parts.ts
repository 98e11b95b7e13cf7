import { type AskForCell, addCellAccounts } from './cell-accounts.js';
import { addCopying } from './copy-table.js';
import { addSorting } from './sort-table.js';

/** Gives everything under a root what the script adds to it: accounts of cells, carried or asked for, sorting and copying. */
export function readyParts(root: ParentNode, ask?: AskForCell): void {
  addCellAccounts(root, ask);
  addSorting(root);
  addCopying(root);
}
