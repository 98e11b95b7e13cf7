import type { NameNode, Node } from '../tree.js';

/** What rows a part of a formula speaks of, and what it takes of each. */
export interface RowsReading {
  /** What is taken of each row; null where only the rows are meant. */
  readonly field: Node | null;
  /** The table or selection; null for the rows of the sheet's group. */
  readonly base: NameNode | null;
  readonly here: boolean;
  readonly where: Node | null;
}

/** The rows of a sheet's group, with nothing said about them. */
export const groupRowsReading: RowsReading = { field: null, base: null, here: false, where: null };

/**
 * How a part of a formula is read where rows are wanted, or a field of rows: in a sheet `sum(length_ft)` and
 * `sum(length_ft where …)` leave out the rows, because the group's are meant. Null where it cannot be rows.
 */
export function readAsRows(
  node: Node | undefined,
  wantsField: boolean,
  namesRows: (name: string) => boolean,
): RowsReading | null {
  if (node === undefined) return groupRowsReading;
  if (node.kind === 'rows') {
    const { field, base, here, where } = node;
    const loneField = wantsField && field === null && base !== null && !namesRows(base.name);
    return loneField ? { field: base, base: null, here, where } : { field, base, here, where };
  }
  if (node.kind === 'name' && namesRows(node.name)) return { ...groupRowsReading, base: node };
  if (wantsField) return { ...groupRowsReading, field: node };
  return node.kind === 'name' ? { ...groupRowsReading, base: node } : null;
}
