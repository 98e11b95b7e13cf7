import type { BookColumn } from '../../record/book.js';

/** The combination of values that each row has in some columns, numbered in order of first appearance. */
export interface Combinations {
  readonly count: number;
  readonly of: Uint32Array;
}

/** The combinations of text and number columns of so many rows; missing is a value of its own. */
export function combinations(columns: readonly BookColumn[], rowCount: number): Combinations {
  let found: Combinations = { count: 1, of: new Uint32Array(rowCount) };
  for (const column of columns) found = refined(found, valuesOf(column));
  return found;
}

/** A number for each row that is the same where the value is; and one more than the highest. */
function valuesOf(column: BookColumn): { readonly of: ArrayLike<number>; readonly count: number } {
  if (column.kind === 'text') return { of: column.codes, count: column.dictionary.length };
  if (column.kind === 'wait') throw new Error('waits are not combined');
  const numberOf = new Map<number, number>();
  const { values, missing } = column;
  const of = new Uint32Array(values.length);
  for (let row = 0; row < of.length; row++) {
    if (missing !== null && missing[row] === 1) continue;
    const value = values[row]!;
    const known = numberOf.get(value) ?? numberOf.size + 1;
    if (known > numberOf.size) numberOf.set(value, known);
    of[row] = known;
  }
  return { of, count: numberOf.size + 1 };
}

function refined(before: Combinations, values: ReturnType<typeof valuesOf>): Combinations {
  const numberOf = new Int32Array(before.count * values.count).fill(-1);
  const of = new Uint32Array(before.of.length);
  let count = 0;
  for (let row = 0; row < of.length; row++) {
    const key = before.of[row]! * values.count + values.of[row]!;
    if (numberOf[key] === -1) numberOf[key] = count++;
    of[row] = numberOf[key]!;
  }
  return { count, of };
}

/** The value that each combination has, where every row of it has the same one; else null. */
export function valueOfEach({ count, of }: Combinations, values: ArrayLike<number>): Uint32Array | null {
  const found = new Float64Array(count).fill(-1);
  for (let row = 0; row < of.length; row++) {
    const combination = of[row]!;
    if (found[combination] === -1) found[combination] = values[row]!;
    else if (found[combination] !== values[row]) return null;
  }
  return Uint32Array.from(found);
}
