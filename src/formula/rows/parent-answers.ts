import type { ParentTable } from '../../record/book.js';
import { type Node, parts } from '../tree.js';
import type { RowsAsked } from './row-values.js';

/**
 * The parents of some rows, where a condition asks only for what rows have from them and there are fewer parents than rows:
 * then each parent is asked once, instead of each of its rows. Null where it asks for anything else.
 */
export function parentToAsk(condition: Node, { table, rows }: RowsAsked): ParentTable | null {
  const { parent } = table;
  if (parent === undefined || rows.length <= parent.table.rowCount) return null;
  const isSettled = (node: Node): boolean => {
    if (node.kind !== 'name') return parts(node).every(isSettled);
    return table.fields.has(node.name) ? parent.gives(node.name) : !parent.table.fields.has(node.name);
  };
  return isSettled(condition) ? parent : null;
}

/** The answer of each row's parent. */
export function answersOfParents(answers: Uint8Array, { rowOf }: ParentTable, rows: Uint32Array): Uint8Array {
  const parents = rowOf();
  const own = new Uint8Array(rows.length);
  for (let at = 0; at < own.length; at += 1) own[at] = answers[parents[rows[at]!]!]!;
  return own;
}
