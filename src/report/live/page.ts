import { addCellAccounts } from './cell-accounts.js';
import { addCopying } from './copy-table.js';
import { openAccounts } from './open-accounts.js';
import { addSorting } from './sort-table.js';

addCellAccounts();
addSorting();
addCopying();
openAccounts();
