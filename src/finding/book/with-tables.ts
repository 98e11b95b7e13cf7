import type { Book, BookTable } from '../../record/book.js';

/** A book with other tables in the place of its own; its station-days are still made only when they are asked for. */
export function withTables(book: Book, tables: ReadonlyMap<string, BookTable>): Book {
  const { sum, solver } = book;
  return {
    sum,
    tables,
    get clusters() {
      return book.clusters;
    },
    ...(solver === undefined ? {} : { solver }),
  };
}
