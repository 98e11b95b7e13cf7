import type { Book } from '../../record/book.js';
import type { ProgramSolver } from '../../record/program-solver.js';

/** A book that asks that solver for plans; its station-days are still made only when they are asked for. */
export function withSolver(book: Book, solver: ProgramSolver): Book {
  const { sum, tables } = book;
  return {
    sum,
    tables,
    get clusters() {
      return book.clusters;
    },
    solver,
  };
}
