import { sumOfColumn } from '../sheet/column-numbers.js';
import { holdsTemperature } from '../unit/convert.js';
import { totalOf } from '../value/census.js';
import type { WholeFunction } from './declaration.js';
import { presentNumbers } from './present-numbers.js';

/** The total of a field. */
export const sum: WholeFunction = {
  works: 'on the whole',
  drawsRowsAgain: true,
  name: 'sum',
  arguments: [{ name: 'field of rows', takes: 'number field' }],
  gives: 'a number in the field’s unit',
  meaning: 'The total over the rows that have the field. A total is a census of what was recorded and has no interval.',
  example: 'sum(staff_hours of station_days where state is "open")',
  kindOf: ([field]) => {
    if (field!.kind.kind === 'number' && holdsTemperature(field!.kind.unit)) {
      return { argument: 0, code: 'units-differ', wanted: 'something that adds up', remedy: 'Take the mean instead.' };
    }
    return field!.kind;
  },
  overSheet: sumOfColumn,
  evaluate: ([field], { environment }) => {
    const { selected, numbers, unit, drawnNumbers } = presentNumbers(field);
    return totalOf(selected, numbers, unit, environment, drawnNumbers);
  },
};
