import type { TableName } from '../record/field.js';
import type { ImportSum } from '../record/file-sum.js';

/** What `store.json` says: that the folder is a store, of which version, and what it holds. */
export interface StoreDescription {
  readonly store: typeof storeMark;
  readonly version: number;
  readonly sum: ImportSum;
  readonly tables: Readonly<Record<TableName, { readonly rows: number; readonly bytes: number }>>;
}

/** The word by which a store knows itself. */
export const storeMark = 'season records';

/** Raised whenever a store written before can no longer be read. */
export const storeVersion = 1;

/** The names of the files in a store beside the tables. */
export const storeFiles = {
  description: 'store.json',
  setAside: 'set-aside.csv',
  setAsideRows: 'set-aside-rows.csv',
  notes: 'notes.csv',
  schema: 'datapackage.json',
} as const;

/** The file that holds a table. */
export function tableFile(table: TableName): string {
  return `${table}.arrow`;
}
