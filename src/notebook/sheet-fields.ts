import { nearestName } from '../problem/nearest.js';
import type { Problem } from '../problem/problem.js';
import type { BookTable } from '../record/book.js';
import type { Cell } from './document.js';
import { cellProblem } from './formula-cell.js';

/** Problems with those of a sentence's fields that its table does not have. */
export function unknownFields(file: string, fields: readonly Cell[], table: BookTable): readonly Problem[] {
  return fields
    .filter(({ text }) => !table.fields.has(text))
    .map((field) => {
      const nearest = nearestName(field.text, table.fields.keys());
      const remedy =
        nearest === null ? `Fields are ${[...table.fields.keys()].join(', ')}.` : `Did you mean "${nearest}"?`;
      return cellProblem(file, field, 'unknown-field', `a field of ${table.name}`, remedy);
    });
}
