import type { Environment } from '../environment.js';
import type { ColumnGiven } from '../functions/declaration.js';
import { mergeAccounts } from '../value/account.js';
import { arithmetic } from '../value/arithmetic.js';
import type { NumberValue } from '../value/evaluated.js';
import { joinSpreads, least, standingOf, unseenPart } from '../value/lift.js';
import { numberFrom } from '../value/number.js';

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

/** The sum of a column's numbers; counts of different rows of a table stay a count, so that shares of it are exact. */
export function sumOfColumn(column: ColumnGiven, environment: Environment): NumberValue {
  const { numbers, cautions } = columnNumbers(column);
  const [first, ...rest] = numbers;
  if (first === undefined) {
    const why = `no row of ${column.sheet.name} has a value there`;
    return numberFrom({ value: null, unit: column.unit, why, standing: 'census', cautions }, environment);
  }
  const sum = rest.reduce((so, number) => arithmetic('+', so, number, environment), first);
  const counted = countedTogether(numbers);
  return numberFrom({ ...sum, counted, cautions: [...new Set([...sum.cautions, ...cautions])] }, environment);
}
