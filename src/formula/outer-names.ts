import type { BookTable } from '../record/book.js';
import { functionNamed } from './functions/functions.js';
import { readAsRows } from './rows/rows-reading.js';
import { type Formula, type Node, parts } from './tree.js';

/** The table that rows are of: of a table or selection by its name, or with null of the sheet's group; null where unknown. */
export type TableOf = (base: string | null) => BookTable | null;

/**
 * The names that a formula takes from outside its rows, each once, in order of first use: inputs, figures, selections,
 * tables, and a sheet's columns and keys, but no fields. So `sum(staff_hours of station_days)` needs no figure that is
 * called staff_hours too. Where the table is not known, every name counts. A sheet
 * stands for rows only where it is named as such.
 */
export function outerNames(
  formula: Formula,
  tableOf: TableOf,
  isSheet: (name: string) => boolean = () => false,
): readonly string[] {
  const names = new Set<string>();
  const visit = (node: Node, row: BookTable | null): void => {
    if (node.kind === 'name') {
      if (row?.fields.has(node.name) !== true) names.add(node.name);
    } else if (node.kind === 'call') visitCall(node, row);
    else if (node.kind === 'rows') visitRows(node, false);
    else for (const part of parts(node)) visit(part, row);
  };
  const visitRows = (node: Node, wantsField: boolean): void => {
    const reading = readAsRows(node, wantsField, (name) => !isSheet(name) && tableOf(name) !== null);
    if (reading === null) {
      visit(node, null);
      return;
    }
    const { field, base, where } = reading;
    if (base !== null) names.add(base.name);
    const table = tableOf(base?.name ?? null);
    for (const part of [field, where]) if (part !== null) visit(part, table);
  };
  const visitCall = (node: Extract<Node, { kind: 'call' }>, row: BookTable | null): void => {
    const declaration = functionNamed(node.name);
    if (declaration?.works !== 'on the whole') {
      // What it works on is the same row's, or outside rows no field at all. A function that is not known says nothing of rows.
      for (const argument of node.arguments) visit(argument, declaration === null ? null : row);
      return;
    }
    node.arguments.forEach((argument, place) => {
      const takes = declaration.arguments[place]?.takes ?? 'sheet key';
      if (takes === 'sheet key') return;
      if (takes === 'number' || takes === 'truth') visit(argument, null);
      else visitRows(argument, takes !== 'rows');
    });
  };
  visit(formula.body, null);
  return [...names];
}
