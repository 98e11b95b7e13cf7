import { ColumnTable } from 'arquero';
import { type Column, numberAt, textAt } from '../record/column.js';
import type { RecordTable } from '../record/records.js';

type Value = string | number | null;

/** A column as arquero takes it: a length, and the value at each row. */
class BorrowedColumn {
  readonly length: number;
  readonly at: (row: number) => Value;

  constructor(length: number, at: (row: number) => Value) {
    this.length = length;
    this.at = at;
  }

  *[Symbol.iterator](): Iterator<Value> {
    for (let row = 0; row < this.length; row++) yield this.at(row);
  }
}

function borrowed(column: Column): BorrowedColumn {
  return column.kind === 'text'
    ? new BorrowedColumn(column.codes.length, (row) => textAt(column, row))
    : new BorrowedColumn(column.values.length, (row) => numberAt(column, row));
}

/**
 * A table of records as an arquero table over the same arrays, nothing copied. Missing is null; dates are days since
 * 1970-01-01 and moments milliseconds since 1970-01-01T00:00Z, as the records hold them. `source_file` and `source_line`
 * tell where each row was read.
 */
export function asArqueroTable(table: RecordTable): ColumnTable {
  const { files, fileOf, lineOf } = table.origin;
  const columns: Record<string, BorrowedColumn> = {};
  for (const [name, column] of table.columns) columns[name] = borrowed(column);
  columns.source_file = new BorrowedColumn(table.rowCount, (row) => files[fileOf[row]!]!);
  columns.source_line = new BorrowedColumn(table.rowCount, (row) => lineOf[row]!);
  return new ColumnTable(columns);
}
