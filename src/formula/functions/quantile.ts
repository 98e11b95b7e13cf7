import { waitEnding } from '../../record/book.js';
import type { Environment } from '../environment.js';
import type { FormulaKind } from '../kind.js';
import type { NumberValue } from '../value/evaluated.js';
import { givenNumber } from '../value/number.js';
import { quantileOf } from '../value/quantile.js';
import { minutesUnit, type Waits, waitQuantile } from '../value/waits.js';
import {
  type ArgumentMistake,
  type CheckedArgument,
  type ColumnGiven,
  fieldGiven,
  type GivenArgument,
  numberGiven,
  type WholeFunction,
} from './declaration.js';
import { withKnownArgument } from './known-argument.js';
import { keepRows, presentNumbers } from './present-numbers.js';
import { quantileOfColumn } from './quantile-of-column.js';

/** The waits of a field where they are known. */
export function presentWaits(given: GivenArgument | undefined): Waits {
  const { selected, values } = fieldGiven(given);
  if (values.kind !== 'wait') throw new Error('a wait was not checked');
  const { minutes, ending } = values;
  const known = (position: number) => ending[position] !== waitEnding.unknown;
  return {
    selected: keepRows(selected, known),
    minutes: minutes.filter((_, position) => known(position)),
    ending: ending.filter((one) => one !== waitEnding.unknown),
  };
}

function kindOf([field, p]: readonly CheckedArgument[]): FormulaKind | ArgumentMistake {
  if (p !== undefined && p.written !== null && !(p.written > 0 && p.written < 1)) {
    const wanted = 'a share between 0 and 1';
    return { argument: 1, code: 'out-of-range', wanted, remedy: 'Write 0.9 for the 90th percentile.' };
  }
  if (p?.kind.kind === 'number' && p.kind.unit.length > 0) {
    const remedy = 'Write 0.9 for the 90th percentile.';
    return { argument: 1, code: 'units-differ', wanted: 'a share, which has no unit', remedy };
  }
  return field!.kind.kind === 'wait' ? { kind: 'number', unit: minutesUnit } : field!.kind;
}

const notAShare = 'the share asked for does not lie between 0 and 1';

function isShare(p: number | null): p is number {
  return p !== null && p > 0 && p < 1;
}

function columnQuantileAt(column: ColumnGiven, p: number | null, environment: Environment): NumberValue {
  return isShare(p) ? quantileOfColumn(column, p, environment) : givenNumber(null, column.unit, notAShare);
}

function quantileAt(field: GivenArgument | undefined, p: number | null, environment: Environment): NumberValue {
  const { values } = fieldGiven(field);
  if (!isShare(p)) {
    const unit = values.kind === 'wait' ? minutesUnit : presentNumbers(field).unit;
    return givenNumber(null, unit, notAShare);
  }
  if (values.kind === 'wait') return waitQuantile(presentWaits(field), p, environment);
  const { selected, numbers, unit } = presentNumbers(field);
  return quantileOf(selected, numbers, unit, p, environment);
}

const gives = 'a number in the field’s unit (minutes for waits), with an interval';
const columnToo = 'Of a sheet’s column it is taken over the rows that have a value.';
const waitsToo = 'Waits still open at the cut-off are censored, not dropped (Kaplan and Meier 1958).';

/** The value below which half of the rows lie. */
export const median: WholeFunction = {
  works: 'on the whole',
  name: 'median',
  arguments: [{ name: 'field of rows', takes: 'number or wait field' }],
  gives,
  meaning: `The value that half of the rows do not pass (type 7 of Hyndman and Fan). ${waitsToo} ${columnToo}`,
  example: 'median(turnaround of decontaminations)',
  kindOf,
  overSheet: (column, environment) => columnQuantileAt(column, 0.5, environment),
  evaluate: ([field], { environment }) => quantileAt(field, 0.5, environment),
};

/** The value below which a given share of the rows lie. */
export const quantile: WholeFunction = {
  works: 'on the whole',
  name: 'quantile',
  arguments: [
    { name: 'field of rows', takes: 'number or wait field' },
    { name: 'share', takes: 'number' },
  ],
  gives,
  meaning: `The value that a given share of the rows do not pass (type 7 of Hyndman and Fan). ${waitsToo} ${columnToo}`,
  example: 'quantile(turnaround of decontaminations, 0.9)',
  kindOf,
  overSheet: (column, environment, [, p]) => {
    const { value } = numberGiven(p);
    return withKnownArgument(columnQuantileAt(column, value.value, environment), 'share', value, environment);
  },
  evaluate: ([field, p], { environment }) => {
    const { value } = numberGiven(p);
    return withKnownArgument(quantileAt(field, value.value, environment), 'share', value, environment);
  },
};
