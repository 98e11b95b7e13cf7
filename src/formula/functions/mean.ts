import { columnNumbers, sumOfColumn } from '../sheet/column-numbers.js';
import { arithmetic } from '../value/arithmetic.js';
import { countOf, totalOf } from '../value/census.js';
import { calculate, drawnNumber } from '../value/lift.js';
import { givenNumber } from '../value/number.js';
import type { WholeFunction } from './declaration.js';
import { presentNumbers } from './present-numbers.js';

/** The arithmetic mean of a field: its total by the number of rows that have it. */
export const mean: WholeFunction = {
  works: 'on the whole',
  drawsRowsAgain: true,
  name: 'mean',
  arguments: [{ name: 'field of rows', takes: 'number field' }],
  gives: 'a number in the field’s unit, with an interval',
  meaning:
    'The arithmetic mean over the rows that have the field. Waits have a median instead: open ones have no mean.',
  example: 'mean(length_ft of inspections)',
  kindOf: ([field]) => field!.kind,
  overSheet: (column, environment) => {
    const rows = givenNumber(columnNumbers(column).numbers.length);
    return arithmetic('/', sumOfColumn(column, environment), rows, environment);
  },
  evaluate: ([field], { environment }) => {
    const { selected, numbers, unit, drawnNumbers } = presentNumbers(field);
    const total = totalOf(selected, numbers, unit, environment, drawnNumbers);
    const rows = countOf(selected, environment);
    return calculate(
      {
        each: (sum, count) => (count === 0 ? Number.NaN : sum / count),
        operands: [drawnNumber(total), drawnNumber(rows)],
        basis: [total, rows],
        unit,
        undefinedWhy: 'no row has the field',
        standing: 'estimate',
      },
      environment,
    );
  },
};
