import { spendingCategory } from '../codes.js';
import type { TableDefinition } from '../field.js';
import { code, integer, needed, number, reference, text } from '../fields.js';

/** Amounts spent, by fiscal year, category and station. */
export const spending: TableDefinition = {
  name: 'spending',
  row: 'an amount spent',
  key: ['entry'],
  fields: [
    needed(text('entry', 'The ledger entry’s number.')),
    needed(integer('fiscal_year', 'year', [1990, 2100], 'The fiscal year it was booked in.')),
    needed(code('category', spendingCategory, 'What it was spent on.')),
    reference('station', 'stations', 'The station it was spent for; missing for the program as a whole.'),
    text('fund', 'Where the money came from.'),
    needed(number('amount', 'dollars', [-5_000_000, 5_000_000], 'The amount; negative for a refund.')),
    text('note', 'What it was for.'),
  ],
};
