import { createHash } from 'node:crypto';
import type { TableName } from '../record/field.js';
import type { ImportSum } from '../record/file-sum.js';

/** What `store.json` says: that the folder is a store, of which version, and what it holds. */
export interface StoreDescription {
  readonly store: typeof storeMark;
  readonly version: number;
  readonly sum: ImportSum;
  readonly tables: Readonly<Record<TableName, { readonly rows: number; readonly bytes: number }>>;
  /** SHA-256 of every other file, by its name; absent in stores of an earlier rampbook. */
  readonly files?: Readonly<Record<string, string>>;
  /** SHA-256 of all the above, as `descriptionFingerprint` takes it; absent likewise. */
  readonly fingerprint?: string;
}

/** The fingerprint of a description's own text: of its JSON without blanks and without the fingerprint itself. */
export function descriptionFingerprint({ fingerprint: _, ...rest }: StoreDescription): string {
  return createHash('sha256').update(JSON.stringify(rest)).digest('hex');
}

/** The word by which a store knows itself. */
export const storeMark = 'season records';

/**
 * The version of the form on disk. Raised by one whenever a store written before could no longer be read, or would be read
 * as something else: a file renamed or with another meaning, a column taken away, another way of making text inert. A file
 * or column that is only added leaves it as it is. A store of another version is never read; importing replaces it.
 */
export const storeVersion = 2;

/** The names of the files in a store beside the tables. */
export const storeFiles = {
  description: 'store.json',
  setAside: 'set-aside.csv',
  setAsideRows: 'set-aside-rows.csv',
  mendedRows: 'mended-rows.csv',
  notes: 'notes.csv',
  doubleEntries: 'double-entries.csv',
  leftOut: 'left-out.csv',
  unmatched: 'unmatched.csv',
  /** What files were read, for the next import to follow. */
  readings: 'readings.json',
  schema: 'datapackage.json',
} as const;

/** The file that holds a table. */
export function tableFile(table: TableName): string {
  return `${table}.arrow`;
}

/** The file that holds the rows of a table that are set aside, as far as they could be read. */
export function asideFile(table: TableName): string {
  return `aside-${table}.arrow`;
}
