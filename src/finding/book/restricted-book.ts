import type { Book, BookColumn, BookTable } from '../../record/book.js';
import type { Origin } from '../../record/records.js';
import { bookWith } from './book-with.js';
import { gather } from './gather.js';
import { belongsToInspections, parentsIn } from './inspection-rows.js';
import { once } from './once.js';

/** The value that some fields must have, by name; null for not recorded. */
export type Choice = ReadonlyMap<string, string | number | null>;

/**
 * The book with only those rows that have the values chosen. A table without one of the fields is not narrowed by it; rows that
 * belong to an inspection are chosen by its value, also where they have one of their own by that name, as a second look has its
 * inspector: they stay with it. The station-days that resamples draw from stay those of the whole book, so that the draws stay
 * the same ones.
 */
export function restrictedBook(book: Book, choice: Choice): Book {
  if (choice.size === 0) return book;
  const tables = new Map([...book.tables].map(([name, table]) => [name, restrictedTable(table, choice, book)]));
  return bookWith(book, { tables });
}

/** The column by which a table's rows are chosen. Fields are told apart by meaning, as a page's book makes each table its own. */
function decidingColumn(table: BookTable, field: string, book: Book): BookColumn {
  const inspections = book.tables.get('inspections');
  const ofInspection = inspections?.fields.get(field)?.meaning;
  if (ofInspection === undefined || ofInspection === table.fields.get(field)?.meaning || !belongsToInspections(table)) {
    return table.column(field);
  }
  return gather(inspections!.column(field), parentsIn(book, table));
}

function restrictedTable(table: BookTable, choice: Choice, book: Book): BookTable {
  const asked = [...choice].filter(([field]) => table.fields.has(field));
  if (asked.length === 0) return table;
  const { name, row, counted, fields, parent } = table;
  // Rows are chosen when a table is first asked for anything: most choices are asked of a few tables only.
  const rows = once(() => chosenRows(table, asked, book));
  const columns = new Map([...fields.keys()].map((field) => [field, once(() => gather(table.column(field), rows()))]));
  const clusterOf = once(() => {
    const of = table.clusterOf;
    return of === null ? null : Uint32Array.from(rows(), (at) => of[at]!);
  });
  const origin = once(() => originOf(table, rows()));
  const parentOf = once(() => Int32Array.from(rows(), (at) => parent!.rowOf()[at]!));
  return {
    name,
    row,
    counted,
    fields,
    ...(parent === undefined ? {} : { parent: { ...parent, rowOf: parentOf } }),
    get rowCount() {
      return rows().length;
    },
    column: (field) => {
      const column = columns.get(field);
      if (column === undefined) throw new Error(`the table ${name} has no field ${field}`);
      return column();
    },
    get clusterOf() {
      return clusterOf();
    },
    get origin() {
      return origin();
    },
  };
}

function originOf({ origin }: BookTable, rows: Int32Array): Origin | null {
  if (origin === null) return null;
  const { files, fileOf, lineOf } = origin;
  return {
    files,
    fileOf: Uint16Array.from(rows, (row) => fileOf[row]!),
    lineOf: Uint32Array.from(rows, (row) => lineOf[row]!),
  };
}

function chosenRows(
  table: BookTable,
  asked: readonly (readonly [string, string | number | null])[],
  book: Book,
): Int32Array {
  const tests = asked.map(([field, value]) => rowTest(decidingColumn(table, field, book), value));
  const rows = new Int32Array(table.rowCount);
  let kept = 0;
  for (let row = 0; row < rows.length; row++) if (tests.every((test) => test(row))) rows[kept++] = row;
  return rows.slice(0, kept);
}

function rowTest(column: BookColumn, value: string | number | null): (row: number) => boolean {
  switch (column.kind) {
    case 'text': {
      const { codes, dictionary } = column;
      const wanted = value === null ? 0 : dictionary.indexOf(String(value), 1);
      return (row) => codes[row] === wanted;
    }
    case 'number': {
      const { values, missing } = column;
      if (value === null) return (row) => missing !== null && missing[row] === 1;
      return (row) => values[row] === value && (missing === null || missing[row] === 0);
    }
    case 'wait':
      throw new Error('rows are not chosen by how long they waited');
  }
}
