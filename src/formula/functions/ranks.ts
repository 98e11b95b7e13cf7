import type { Environment } from '../environment.js';
import { columnNumbers, commonBasis, sumOfColumn } from '../sheet/column-numbers.js';
import { plain } from '../unit/unit.js';
import type { NumberValue } from '../value/evaluated.js';
import { numberFrom } from '../value/number.js';
import type { CheckedArgument, ColumnGiven, WholeFunction } from './declaration.js';

const words = {
  works: 'on the whole',
  arguments: [{ name: 'column of sheet', takes: 'sheet column' }],
  evaluate: () => {
    throw new Error('a sheet column was not checked');
  },
} satisfies Partial<WholeFunction>;

function ownNumber({ sheet, values, own }: ColumnGiven): NumberValue {
  const value = own === null ? undefined : values[own];
  if (value?.kind !== 'number') throw new Error(`a number of this row of ${sheet.name} was not checked`);
  return value;
}

type Before = (other: number, own: number) => boolean;

/** The place of the row's own number, which is one more than how many numbers stand before it. */
function rankOf(column: ColumnGiven, before: Before, environment: Environment): NumberValue {
  const own = ownNumber(column);
  const { numbers, cautions } = columnNumbers(column);
  const basis = commonBasis(numbers);
  const place = (mine: number, others: readonly number[]) =>
    Number.isNaN(mine) ? Number.NaN : 1 + others.filter((other) => before(other, mine)).length;
  const draws = () => {
    const drawn = numbers.map((number) => number.draws?.() ?? number.value!);
    const at = (values: Float64Array | number, draw: number) => (typeof values === 'number' ? values : values[draw]!);
    const mine = own.draws?.() ?? own.value ?? Number.NaN;
    return Float64Array.from({ length: environment.resamples.count }, (_, draw) =>
      place(
        at(mine, draw),
        drawn.map((values) => at(values, draw)),
      ),
    );
  };
  const value =
    own.value === null
      ? null
      : place(
          own.value,
          numbers.map((number) => number.value!),
        );
  return numberFrom(
    {
      ...basis,
      value,
      unit: plain,
      why: value === null ? (own.why ?? 'the row has no value to be ranked') : null,
      draws: numbers.some((number) => number.draws !== null) ? draws : null,
      cautions: [...new Set([...basis.cautions, ...cautions])],
    },
    environment,
  );
}

const rank = {
  ...words,
  gives: 'a plain number, with an interval where the column is estimated',
  kindOf: () => ({ kind: 'number', unit: plain }),
} satisfies Partial<WholeFunction>;

/** The place of this row when the highest number is first. */
export const rankFromHighest: WholeFunction = {
  ...rank,
  name: 'rank_from_highest',
  meaning:
    'The place of this row among all rows of the sheet, 1 for the highest; equal numbers share the better place. Its interval is of its places in the shared resamples, and wide where the rows can hardly be told apart.',
  example: 'rank_from_highest(inspected of by_station)',
  overSheet: (column, environment) => rankOf(column, (other, own) => other > own, environment),
};

/** The place of this row when the lowest number is first. */
export const rankFromLowest: WholeFunction = {
  ...rank,
  name: 'rank_from_lowest',
  meaning: 'The place of this row among all rows of the sheet, 1 for the lowest; equal numbers share the better place.',
  example: 'rank_from_lowest(inspected of by_station)',
  overSheet: (column, environment) => rankOf(column, (other, own) => other < own, environment),
};

/** The sum of a column down to this row. */
export const runningSum: WholeFunction = {
  ...words,
  name: 'running_sum',
  gives: 'a number in the column’s unit',
  arguments: [...words.arguments, { name: 'key', takes: 'sheet key' }],
  meaning:
    'The sum of a column from the first row of the sheet down to this one, in the order in which its rows are shown. With keys of the sheet behind it the sum starts anew for every value of them: running_sum(inspected of by_day, season).',
  example: 'running_sum(inspected of by_station)',
  kindOf: ([column]: readonly CheckedArgument[]) => column!.kind,
  overSheet: (column, environment) => {
    const { sheet, own, values, within } = column;
    const keys = within.map((key) => sheet.keys.indexOf(key));
    const isBeside = (row: number) => keys.every((key) => sheet.rowKeys[row]![key] === sheet.rowKeys[own!]![key]);
    const last = sheet.order.indexOf(own!);
    const rows = sheet.order.slice(0, last + 1).filter(isBeside);
    return sumOfColumn({ ...column, rows, values: [...rows].map((row) => values[row]!) }, environment);
  },
};
