import { nearestName } from '../problem/nearest.js';
import type { Problem } from '../problem/problem.js';
import { inDocument } from '../problem/problem.js';
import type { Book } from '../record/book.js';
import type { NotebookDocument } from './document.js';

/** Adds a problem for every filter in a notebook's head that is no field of any table. */
export function checkFilters({ file, settings }: NotebookDocument, book: Book, problems: Problem[]): void {
  const fields = new Set([...book.tables.values()].flatMap((table) => [...table.fields.keys()]));
  for (const seen of settings.filters ?? []) {
    if (fields.has(seen)) continue;
    const nearest = nearestName(seen, fields);
    problems.push({
      code: 'unknown-field',
      severity: 'sets aside',
      place: inDocument(file, 1, 1),
      seen,
      wanted: 'a field of the records to filter by',
      remedy: nearest === null ? 'Take it out of the filters.' : `Did you mean "${nearest}"?`,
    });
  }
}
