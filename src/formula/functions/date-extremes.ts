import type { Evaluated } from '../value/evaluated.js';
import { fieldGiven, type GivenArgument, type WholeFunction } from './declaration.js';
import { keepRows } from './present-numbers.js';

function extreme(field: GivenArgument | undefined, keep: (one: number, other: number) => number): Evaluated {
  const { selected, values } = fieldGiven(field);
  if (values.kind !== 'date') throw new Error('a date field was not checked');
  const known = values.values.filter((day) => !Number.isNaN(day));
  const { account } = keepRows(selected, (position) => !Number.isNaN(values.values[position]!));
  const day = known.length === 0 ? null : known.reduce((one, other) => keep(one, other));
  return { kind: 'date', day, accounts: [account], why: 'no row has the field' };
}

const words = {
  works: 'on the whole',
  arguments: [{ name: 'field of rows', takes: 'date field' }],
  gives: 'a date',
  kindOf: () => ({ kind: 'date' }),
} satisfies Partial<WholeFunction>;

/** The earliest date of a field. */
export const earliest: WholeFunction = {
  ...words,
  name: 'earliest',
  meaning: 'The earliest date of the rows that have the field.',
  example: 'earliest(date of inspections)',
  evaluate: ([field]) => extreme(field, Math.min),
};

/** The latest date of a field. */
export const latest: WholeFunction = {
  ...words,
  name: 'latest',
  meaning: 'The latest date of the rows that have the field.',
  example: 'latest(date of inspections)',
  evaluate: ([field]) => extreme(field, Math.max),
};
