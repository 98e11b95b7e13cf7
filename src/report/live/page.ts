import { addCopying } from './copy-table.js';
import { openAccounts } from './open-accounts.js';
import { addSorting } from './sort-table.js';

addSorting();
addCopying();
openAccounts();
