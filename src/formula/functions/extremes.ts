import type { Environment } from '../environment.js';
import { columnNumbers, commonBasis } from '../sheet/column-numbers.js';
import type { NumberValue } from '../value/evaluated.js';
import { numberFrom } from '../value/number.js';
import type { ColumnGiven, GivenArgument, WholeFunction } from './declaration.js';
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

function extremeOfColumn(
  column: ColumnGiven,
  keep: (one: number, other: number) => number,
  environment: Environment,
): NumberValue {
  const { numbers, cautions } = columnNumbers(column);
  const basis = commonBasis(numbers);
  const values = numbers.map(({ value }) => value!);
  return numberFrom(
    {
      ...basis,
      value: values.length === 0 ? null : values.reduce((one, other) => keep(one, other)),
      unit: column.unit,
      why: values.length === 0 ? `no row of ${column.sheet.name} has a value there` : null,
      barred: 'a lowest or highest value is in it, which resampling cannot judge',
      cautions: [...new Set([...basis.cautions, ...cautions])],
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
  overSheet: (column, environment) => extremeOfColumn(column, Math.min, environment),
  evaluate: ([field], { environment }) => extreme(field, (one, other) => Math.min(one, other), environment),
};

/** The highest value of a field. */
export const highest: WholeFunction = {
  ...words,
  name: 'highest',
  meaning: 'The highest recorded value of the rows that have the field. It has no interval.',
  example: 'highest(length_ft of inspections)',
  overSheet: (column, environment) => extremeOfColumn(column, Math.max, environment),
  evaluate: ([field], { environment }) => extreme(field, (one, other) => Math.max(one, other), environment),
};
