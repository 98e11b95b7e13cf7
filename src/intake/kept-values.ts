import type { Growable } from './growing.js';

/** Writes the values of the rows that are kept, one behind the other, from a place on; `to` may be the same array. */
export function putKept<A extends Growable>(values: A, aside: Uint8Array, rows: number, to: A, first: number): void {
  // One loop for each kind of array: a loop that meets several runs at a third of the speed.
  if (values instanceof Uint8Array) putBytes(values, aside, rows, to as Uint8Array, first);
  else if (values instanceof Uint32Array) putWhole(values, aside, rows, to as Uint32Array, first);
  else if (values instanceof Float64Array) putNumbers(values, aside, rows, to as Float64Array, first);
  else if (values instanceof Int32Array) putDays(values, aside, rows, to as Int32Array, first);
  else throw new Error('no rows are drafted in such an array');
}

/** How many rows are not set aside. */
export function countKept(aside: Uint8Array, rows: number): number {
  let kept = rows;
  for (let row = 0; row < rows; row++) kept -= aside[row]!;
  return kept;
}

/** How many rows there are up to the last that is kept: behind it nothing may be put. */
function rowsToLast(aside: Uint8Array, rows: number): number {
  let last = rows;
  while (last > 0 && aside[last - 1] === 1) last--;
  return last;
}

// Each value is put, and the next one over it where its row is set aside: a question at every row would cost three times more.
function putBytes(values: Uint8Array, aside: Uint8Array, rows: number, to: Uint8Array, first: number): void {
  const last = rowsToLast(aside, rows);
  for (let row = 0, at = first; row < last; row++) {
    to[at] = values[row]!;
    at += 1 - aside[row]!;
  }
}

function putWhole(values: Uint32Array, aside: Uint8Array, rows: number, to: Uint32Array, first: number): void {
  const last = rowsToLast(aside, rows);
  for (let row = 0, at = first; row < last; row++) {
    to[at] = values[row]!;
    at += 1 - aside[row]!;
  }
}

function putNumbers(values: Float64Array, aside: Uint8Array, rows: number, to: Float64Array, first: number): void {
  const last = rowsToLast(aside, rows);
  for (let row = 0, at = first; row < last; row++) {
    to[at] = values[row]!;
    at += 1 - aside[row]!;
  }
}

function putDays(values: Int32Array, aside: Uint8Array, rows: number, to: Int32Array, first: number): void {
  const last = rowsToLast(aside, rows);
  for (let row = 0, at = first; row < last; row++) {
    to[at] = values[row]!;
    at += 1 - aside[row]!;
  }
}
