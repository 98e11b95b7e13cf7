import type { Column } from './column.js';
import type { TableDefinition, TableName } from './field.js';

/** Where each row of a table was read: `files[fileOf[row]]`, at physical line `lineOf[row]`. */
export interface Origin {
  readonly files: readonly string[];
  readonly fileOf: Uint8Array | Uint16Array;
  readonly lineOf: Uint32Array;
}

/** The kept rows of one canonical table, column by column, each row with its place in the exports. */
export interface RecordTable {
  readonly definition: TableDefinition;
  readonly rowCount: number;
  /** By field name; every field of the definition is there, all missing where no export gave it. */
  readonly columns: ReadonlyMap<string, Column>;
  readonly origin: Origin;
}

/** All canonical tables; a table that no export gave has no rows. */
export type Records = Readonly<Record<TableName, RecordTable>>;
