import type { Book, BookTable, ParentTable } from '../../record/book.js';
import { bookWith } from './book-with.js';

/** What was asked of each table, by the name of the column (`clusterColumn` for its station-days), and by whom. */
export type AskedColumns = ReadonlyMap<string, ReadonlyMap<string, ReadonlySet<string>>>;

/** Stands for a table's station-days among the names of its columns. */
export const clusterColumn = '#station-day';

/**
 * A book that notes which columns are asked of it. `asking` names who asks at that moment; an empty name is nobody in
 * particular. What was asked grows as the book is used.
 */
export function watchedBook(book: Book, asking: () => string): { readonly book: Book; readonly asked: AskedColumns } {
  const asked = new Map<string, Map<string, Set<string>>>();
  const note = (table: string, column: string): void => {
    const columns = asked.get(table) ?? new Map<string, Set<string>>();
    asked.set(table, columns);
    const names = columns.get(column) ?? new Set<string>();
    columns.set(column, names.add(asking()));
  };
  const tables = new Map([...book.tables].map(([name, table]) => [name, watchedTable(table, note)]));
  return { book: bookWith(book, { tables }), asked };
}

function watchedTable(table: BookTable, note: (table: string, column: string) => void): BookTable {
  const { name, parent } = table;
  const watching = (of: BookTable) => (wanted: string) => {
    note(name, wanted);
    return of.column(wanted);
  };
  const clusterOf = () => {
    note(name, clusterColumn);
    return table.clusterOf;
  };
  if (parent === undefined) return askedThrough(table, watching(table), clusterOf);
  // What is asked of the parents stands for the same column of their rows.
  const parents = askedThrough(parent.table, watching(parent.table), () => parent.table.clusterOf);
  return askedThrough(table, watching(table), clusterOf, { ...parent, table: parents });
}

/** A table with other ways to its columns, its station-days and its parents, asked only when somebody asks. */
function askedThrough(
  { name, row, counted, rowCount, fields, origin }: BookTable,
  column: BookTable['column'],
  clusterOf: () => BookTable['clusterOf'],
  parent?: ParentTable,
): BookTable {
  return {
    name,
    row,
    counted,
    rowCount,
    fields,
    origin,
    ...(parent === undefined ? {} : { parent }),
    column,
    get clusterOf() {
      return clusterOf();
    },
  };
}
