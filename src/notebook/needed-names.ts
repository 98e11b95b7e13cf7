import { outerNames, type TableOf } from '../formula/outer-names.js';
import { type Formula, type Node, namesIn, parts } from '../formula/tree.js';
import type { Book } from '../record/book.js';

/**
 * The names that a formula needs before it can be computed. A name that is also a field may be the field of its own
 * formula, as in a column `staff_hours` that is `sum(staff_hours)`: it does not need itself.
 */
export function neededNames(
  own: string,
  formula: Formula,
  book: Book,
  tableOf: TableOf,
  isSheet: (name: string) => boolean,
): readonly string[] {
  const isField = [...book.tables.values()].some((table) => table.fields.has(own));
  return outerNames(formula, tableOf, isSheet).filter((name) => name !== own || !isField);
}

/** The columns of a sheet that one of its own columns asks about in other rows: looked up, summed, ranked or compared. */
export function ownColumns(sheet: string, formula: Formula): readonly string[] {
  if (!namesIn(formula).includes(sheet)) return [];
  const columns = new Set<string>();
  const visit = (node: Node): void => {
    if (node.kind === 'lookup' && node.sheet.name === sheet) columns.add(node.column.name);
    if (node.kind === 'rows' && node.base?.name === sheet) {
      for (const part of [node.field, node.where]) if (part !== null) addNames(part, columns);
    }
    parts(node).forEach(visit);
  };
  visit(formula.body);
  return [...columns];
}

function addNames(node: Node, names: Set<string>): void {
  if (node.kind === 'name') names.add(node.name);
  for (const part of parts(node)) addNames(part, names);
}

/** Whether a formula sums down a sheet, so that the order of its rows matters. */
export function sumsDown({ body }: Formula): boolean {
  const visit = (node: Node): boolean =>
    (node.kind === 'call' && node.name === 'running_sum') || parts(node).some(visit);
  return visit(body);
}
