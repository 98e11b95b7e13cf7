import type { BookColumn, BookField, BookTable, ParentTable } from '../../record/book.js';
import type { Origin } from '../../record/records.js';
import { once } from './once.js';

/** A field and how its values are made when they are first asked for. */
export interface FieldSource {
  readonly field: BookField;
  readonly build: () => BookColumn;
}

/** What a table of the book is made of. */
export interface TableParts {
  readonly name: string;
  readonly row: string;
  readonly counted: string;
  readonly rowCount: number;
  /** Where two have the same name, the earlier wins. */
  readonly sources: readonly FieldSource[];
  readonly clusterOf: (() => Uint32Array) | null;
  readonly origin: Origin | null;
  readonly parent?: ParentTable;
}

/** A table whose columns, and whose station-days, are made when they are first asked for, and kept. */
export function lazyTable(parts: TableParts): BookTable {
  const fields = new Map<string, BookField>();
  const columns = new Map<string, () => BookColumn>();
  for (const { field, build } of parts.sources) {
    if (fields.has(field.name)) continue;
    fields.set(field.name, field);
    columns.set(field.name, once(build));
  }
  const { name, row, counted, rowCount, origin, parent } = parts;
  const clusterOf = parts.clusterOf === null ? null : once(parts.clusterOf);
  return {
    name,
    row,
    counted,
    rowCount,
    fields,
    origin,
    ...(parent === undefined ? {} : { parent }),
    column: (wanted) => {
      const column = columns.get(wanted);
      if (column === undefined) throw new Error(`the table ${name} has no field ${wanted}`);
      return column();
    },
    get clusterOf() {
      return clusterOf === null ? null : clusterOf();
    },
  };
}
