import type { Consequence, Rule } from './rule.js';

function setsAside(code: string, meaning: string, remedy: string, instead: readonly Consequence[] = []): Rule {
  return { code, scope: 'links and keys', severity: 'sets aside', instead, meaning, remedy };
}

/** What can be wrong between rows: keys that repeat, references that lead nowhere, waters that nobody knows. */
export const linkRules: readonly Rule[] = [
  setsAside(
    'duplicate-key',
    'an earlier row that was not set aside has the same key',
    'Leave one out, or give it a key of its own.',
  ),
  setsAside(
    'unknown-reference',
    'it names a row that was not read',
    'Mend the cell, say under codes which it stands for, or import the file that lists it.',
  ),
  setsAside(
    'nothing-to-complete',
    'the row completes others, and no kept row has its key',
    'Import the file that has the row, or mend that row or the key.',
  ),
  setsAside(
    'told-twice',
    'the row completes another one, whose field is told already',
    'Leave one of them out, or add them up in the export: two amounts of one day are not added here.',
  ),
  setsAside('parent-set-aside', 'the row it belongs to was set aside', 'Mend that row, and this one follows.'),
  setsAside(
    'double-entry',
    'another row records the same event under another key; both stand in double-entries.csv',
    'Leave one of the two out, or say which is kept: duplicates: { alike: […], keep: first, last, neither or both }.',
  ),
  setsAside(
    'unmatched-water',
    'no water of that name and region is in the list of aliases',
    'Fill in its row of unmatched.csv in the store, and add it to the aliases.',
    ['notes'],
  ),
  setsAside(
    'ambiguous-water',
    'several waters bear that name, and the cell does not say in which region',
    'Say the region; it is never guessed.',
    ['notes'],
  ),
];
