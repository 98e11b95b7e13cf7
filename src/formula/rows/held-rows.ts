import type { ParentTable } from '../../record/book.js';
import { unknown, yes } from '../missing.js';

/** The rows for which a condition holds, ascending, and of how many others nobody knows whether it does. */
export interface HeldRows {
  readonly rows: Uint32Array;
  readonly unclear: number;
}

/** Those of some rows whose answer is yes. */
export function heldRows(all: Uint32Array, answers: Uint8Array): HeldRows {
  let held = 0;
  let unclear = 0;
  for (let at = 0; at < answers.length; at += 1) {
    if (answers[at] === yes) held += 1;
    else if (answers[at] === unknown) unclear += 1;
  }
  const rows = new Uint32Array(held);
  for (let at = 0, kept = 0; kept < held; at += 1) if (answers[at] === yes) rows[kept++] = all[at]!;
  return { rows, unclear };
}

/** All rows of parents whose answer is yes; null where rows do not stand in the order of their parents. */
export function heldOfParents(parent: ParentTable, answers: Uint8Array): HeldRows | null {
  const starts = startsOf(parent);
  if (starts === null) return null;
  let held = 0;
  let unclear = 0;
  for (let at = 0; at < answers.length; at += 1) {
    const own = starts[at + 1]! - starts[at]!;
    if (answers[at] === yes) held += own;
    else if (answers[at] === unknown) unclear += own;
  }
  const rows = new Uint32Array(held);
  let kept = 0;
  for (let at = 0; at < answers.length; at += 1) {
    if (answers[at] === yes) for (let row = starts[at]!; row < starts[at + 1]!; row += 1) rows[kept++] = row;
  }
  return { rows, unclear };
}

/** Where the rows of each parent start, found once for the rows of a table. */
const known = new WeakMap<Int32Array, Uint32Array | null>();

/** The first row of each parent, and behind them the number of all rows; null where rows stand in another order. */
function startsOf({ table, rowOf }: ParentTable): Uint32Array | null {
  const parents = rowOf();
  const found = known.get(parents);
  if (found !== undefined) return found;
  const starts = findStarts(parents, table.rowCount);
  known.set(parents, starts);
  return starts;
}

function findStarts(parents: Int32Array, count: number): Uint32Array | null {
  const starts = new Uint32Array(count + 1);
  let next = 0;
  for (let row = 0; row < parents.length; row += 1) {
    const parent = parents[row]!;
    if (parent < next - 1) return null;
    while (next <= parent) starts[next++] = row;
  }
  return starts.fill(parents.length, next);
}
