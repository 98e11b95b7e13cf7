import type { Book } from '../../record/book.js';

/** A book with other tables or another solver in the place of its own; its station-days are still made only when asked for. */
export function bookWith(book: Book, { tables = book.tables, solver = book.solver }: Partial<Book>): Book {
  return {
    sum: book.sum,
    tables,
    get clusters() {
      return book.clusters;
    },
    ...(solver === undefined ? {} : { solver }),
  };
}
