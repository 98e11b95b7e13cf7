import type { Rule } from './rule.js';

function stops(code: string, meaning: string, remedy: string): Rule {
  return { code, scope: 'mending', severity: 'stops', instead: [], meaning, remedy };
}

/** What can be wrong with a file of corrections; half of one is never taken in. */
export const mendingRules: readonly Rule[] = [
  stops('not-corrections', 'the file is no copy of a ledger', 'Save it with commas, its header as it was.'),
  stops('no-such-origin', 'no row of that file and line was set aside', 'Take file and line from the ledger.'),
  stops('withheld-row', 'nothing of the row may be shown, since it may be private', 'Correct it in the export itself.'),
  stops('private-cell', 'a private cell stays as its export has it', 'Leave the word withheld where it is.'),
];
