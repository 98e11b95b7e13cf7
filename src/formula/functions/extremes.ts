import type { Environment } from '../environment.js';
import { numberFrom } from '../value/number.js';
import type { GivenArgument, WholeFunction } from './declaration.js';
import { presentNumbers } from './present-numbers.js';

function extreme(
  field: GivenArgument | undefined,
  keep: (one: number, other: number) => number,
  environment: Environment,
) {
  const { selected, numbers, unit } = presentNumbers(field);
  return numberFrom(
    {
      value: numbers.length === 0 ? null : numbers.reduce(keep),
      unit,
      why: numbers.length === 0 ? 'no row has the field' : null,
      standing: 'census',
      barred: 'a lowest or highest value is in it, which resampling cannot judge',
      accounts: [selected.account],
    },
    environment,
  );
}

const words = {
  works: 'on the whole',
  arguments: [{ name: 'field of rows', takes: 'number field' }],
  gives: 'a number in the field’s unit',
  kindOf: ([field]) => field!.kind,
} satisfies Partial<WholeFunction>;

/** The lowest value of a field. */
export const lowest: WholeFunction = {
  ...words,
  name: 'lowest',
  meaning: 'The lowest recorded value of the rows that have the field. It has no interval.',
  example: 'lowest(length_ft of inspections)',
  evaluate: ([field], { environment }) => extreme(field, (one, other) => Math.min(one, other), environment),
};

/** The highest value of a field. */
export const highest: WholeFunction = {
  ...words,
  name: 'highest',
  meaning: 'The highest recorded value of the rows that have the field. It has no interval.',
  example: 'highest(length_ft of inspections)',
  evaluate: ([field], { environment }) => extreme(field, (one, other) => Math.max(one, other), environment),
};
