import { type Formula, namesIn } from '../formula/tree.js';
import type { Book } from '../record/book.js';

/**
 * The names that a formula needs before it can be computed. A name that is also a field may be the field of its own
 * formula, as in a column `staff_hours` that is `sum(staff_hours)`: it does not need itself.
 */
export function neededNames(own: string, formula: Formula, book: Book): readonly string[] {
  const isField = [...book.tables.values()].some((table) => table.fields.has(own));
  return namesIn(formula).filter((name) => name !== own || !isField);
}
