import type { RowValues } from '../rows/row-values.js';
import { plain } from '../unit/unit.js';
import { numberFrom } from '../value/number.js';
import { fieldGiven, type WholeFunction } from './declaration.js';
import { keepRows } from './present-numbers.js';

/** A value a row that is the same where the field is, and null where it is missing. */
function keysOf(values: RowValues): (position: number) => number | null {
  if (values.kind === 'text') return (position) => values.codes[position] || null;
  if (values.kind === 'number' || values.kind === 'date' || values.kind === 'instant') {
    return (position) => (Number.isNaN(values.values[position]) ? null : values.values[position]!);
  }
  throw new Error('a field was not checked');
}

/** How many different values a field has. */
export const distinct: WholeFunction = {
  works: 'on the whole',
  name: 'distinct',
  arguments: [{ name: 'field of rows', takes: 'any field' }],
  gives: 'a plain number',
  meaning: 'How many different values the field has among the rows; missing is none of them. It has no interval.',
  example: 'distinct(craft of inspections where season is 2025)',
  kindOf: ([field]) => {
    const { kind } = field!.kind;
    if (kind === 'text' || kind === 'number' || kind === 'date' || kind === 'instant')
      return { kind: 'number', unit: plain };
    return { argument: 0, code: 'wrong-kind', wanted: 'a text, number or date field', remedy: 'Name one field.' };
  },
  evaluate: ([field], { environment }) => {
    const { selected, values } = fieldGiven(field);
    const key = keysOf(values);
    const seen = new Set<number>();
    const present = keepRows(selected, (position) => key(position) !== null);
    for (let position = 0; position < selected.account.rows.length; position += 1) {
      const value = key(position);
      if (value !== null) seen.add(value);
    }
    return numberFrom(
      {
        value: seen.size,
        unit: plain,
        standing: 'census',
        barred: 'a number of different values is in it, which resampling would understate',
        accounts: [present.account],
      },
      environment,
    );
  },
};
