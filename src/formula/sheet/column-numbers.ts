import type { Environment } from '../environment.js';
import type { ColumnGiven } from '../functions/declaration.js';
import { mergeAccounts } from '../value/account.js';
import { isFixed } from '../value/arithmetic.js';
import type { NumberValue } from '../value/evaluated.js';
import { joinSpreads, least, standingOf, unseenPart } from '../value/lift.js';
import { numberFrom } from '../value/number.js';
import { scaledInterval } from '../value/scaled-interval.js';

/** The numbers of a sheet's column that are there, and what is to be said of those that are not. */
export interface ColumnNumbers {
  readonly numbers: readonly NumberValue[];
  readonly cautions: readonly string[];
}

/** The numbers of a column in the rows asked of; rows without a value are left out, and it is said. */
export function columnNumbers({ sheet, rows, values, cautions }: ColumnGiven): ColumnNumbers {
  const numbers = values.filter((value) => value.kind === 'number').filter(({ value }) => value !== null);
  const without = rows.length - numbers.length;
  const said = `${without} of ${rows.length} rows of ${sheet.name} have no value there and are left out`;
  return { numbers, cautions: without === 0 ? cautions : [...cautions, said] };
}

/** All the rows that several plain counts of one table count, where no row is counted twice; null otherwise. */
function countedTogether(numbers: readonly NumberValue[]): NumberValue['counted'] {
  const [first] = numbers;
  if (first?.counted == null) return null;
  const { table } = first.counted;
  const parts = numbers.map(({ counted }) => (counted?.table === table ? counted.rows : null));
  const length = parts.reduce((sum, rows) => sum + (rows?.length ?? 0), 0);
  const rows = new Uint32Array(length);
  let at = 0;
  for (const part of parts) {
    if (part === null) return null;
    rows.set(part, at);
    at += part.length;
  }
  rows.sort();
  return rows.some((row, place) => place > 0 && row === rows[place - 1]) ? null : { table, rows };
}

/** What several numbers have in common as the basis of another. */
export function commonBasis(
  numbers: readonly NumberValue[],
): Pick<NumberValue, 'standing' | 'barred' | 'fewest' | 'clusters' | 'cautions' | 'accounts'> {
  const unseen = numbers.some(({ standing, draws }) => standing === 'estimate' && draws === null);
  return {
    standing: standingOf(numbers),
    barred: numbers.find(({ barred }) => barred !== null)?.barred ?? (unseen ? unseenPart : null),
    fewest: least(numbers.map(({ fewest }) => fewest)),
    clusters: () => joinSpreads(numbers),
    cautions: [...new Set(numbers.flatMap(({ cautions }) => cautions))],
    accounts: mergeAccounts(numbers.map(({ accounts }) => accounts)),
  };
}

/** The interval of a sum of which one number alone is estimated: its own, moved by all that stands still; null in other cases. */
function movedInterval(numbers: readonly NumberValue[], total: number): NumberValue['ownInterval'] {
  const [moving, ...more] = numbers.filter((number) => !isFixed(number));
  const own = moving?.ownInterval ?? null;
  return own === null || more.length > 0 ? null : () => scaledInterval(own(), 1, total - moving!.value!);
}

/** The sum of all numbers in every resample. */
function drawSums(numbers: readonly NumberValue[], resamples: number): Float64Array {
  const sums = new Float64Array(resamples);
  for (const { value, draws } of numbers) {
    const drawn = draws?.() ?? null;
    for (let draw = 0; draw < resamples; draw += 1) sums[draw]! += drawn === null ? value! : drawn[draw]!;
  }
  return sums;
}

/** The fewest records of a sum: those of counts together, of anything else the fewest of any part. */
function fewestOfSum(numbers: readonly NumberValue[]): number | null {
  const parts = numbers.map(({ fewest }) => fewest).filter((fewest) => fewest !== null);
  const isCount = parts.length === numbers.length && numbers.every(({ standing }) => standing === 'census');
  return isCount ? parts.reduce((sum, fewest) => sum + fewest, 0) : least(parts);
}

/**
 * The sum of a column's numbers; counts of different rows of a table stay a count, so that shares of it are exact. The sum of
 * temperatures is good for nothing but their mean. All numbers are added up at once, since a sheet may have thousands of rows.
 */
export function sumOfColumn(column: ColumnGiven, environment: Environment): NumberValue {
  const { numbers, cautions } = columnNumbers(column);
  const [first, ...rest] = numbers;
  if (first === undefined) {
    const why = `no row of ${column.sheet.name} has a value there`;
    return numberFrom({ value: null, unit: column.unit, why, standing: 'census', cautions }, environment);
  }
  if (rest.length === 0) {
    return numberFrom({ ...first, cautions: [...new Set([...first.cautions, ...cautions])] }, environment);
  }
  const total = numbers.reduce((sum, { value }) => sum + value!, 0);
  const ownInterval = movedInterval(numbers, total);
  const basis = commonBasis(numbers);
  return numberFrom(
    {
      ...basis,
      value: Number.isFinite(total) ? total : null,
      why: Number.isFinite(total) ? null : 'the result is too large to be a number',
      unit: column.unit,
      draws: numbers.every(({ draws }) => draws === null) ? null : () => drawSums(numbers, environment.resamples.count),
      ownInterval,
      // One part that cannot be resampled does not matter where its own interval is kept.
      barred: ownInterval === null ? basis.barred : (numbers.find(({ barred }) => barred !== null)?.barred ?? null),
      fewest: fewestOfSum(numbers),
      counted: countedTogether(numbers),
      cautions: [...new Set([...basis.cautions, ...cautions])],
    },
    environment,
  );
}
