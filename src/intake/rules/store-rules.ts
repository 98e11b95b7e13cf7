import type { Rule } from './rule.js';

function stops(code: string, meaning: string, remedy: string): Rule {
  return { code, scope: 'store', severity: 'stops', instead: [], meaning, remedy };
}

/** What can be wrong with the store that an import writes to, or a command reads from. */
export const storeRules: readonly Rule[] = [
  stops('no-such-store', 'there is no store in that folder', 'Import the exports first.'),
  stops('not-a-store', 'the folder holds other files', 'Name another folder; nothing in this one is touched.'),
  stops('other-version', 'the store was written by another version of the program', 'Import the exports again.'),
  stops('damaged-store', 'a file of the store is missing or cut short', 'Import the exports again.'),
  stops('store-held', 'another import is writing to the store', 'Wait until it has ended, and import again.'),
  stops('cannot-write', 'the disk is full, or the folder may not be written to', 'Look at the space and the rights.'),
];
