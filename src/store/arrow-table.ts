import { tableFromColumns, tableFromIPC, tableToIPC } from '@uwdata/flechette';
import { type Column, numberColumn, textColumn } from '../record/column.js';
import { holdsNumbers, type TableDefinition } from '../record/field.js';
import type { RecordTable } from '../record/records.js';
import {
  type ArrowBatch,
  arrowCodes,
  arrowColumn,
  arrowWhole,
  columnFromArrow,
  textFromArrow,
} from './arrow-column.js';

/** The columns that tell where each row was read. */
const sourceFile = 'source_file';
const sourceLine = 'source_line';

/** Pieces below this many bytes are put together, so that a small table is written at once. */
const smallPiece = 1 << 16;

/**
 * A table of records as the pieces of an Arrow IPC file, one behind the other: its fields in order, then the file and line
 * each row was read from. Values are pieces as they lie in the table, so that a season is not held twice while it is written.
 */
export function arrowPieces(table: RecordTable): readonly Uint8Array[] {
  const { fileOf, files, lineOf } = table.origin;
  const columns = table.definition.fields.map((field): [string, ReturnType<typeof arrowColumn>] => [
    field.name,
    arrowColumn(table.columns.get(field.name)!, field),
  ]);
  columns.push([sourceFile, arrowCodes(fileOf, files)], [sourceLine, arrowWhole(lineOf)]);
  const pieces: Uint8Array[] = [];
  let small: Uint8Array[] = [];
  const take = (): void => {
    if (small.length > 0) pieces.push(Buffer.concat(small));
    small = [];
  };
  const write = (bytes: Uint8Array): void => {
    if (bytes.length < smallPiece) small.push(bytes);
    else {
      take();
      pieces.push(bytes);
    }
  };
  const sink = { write, pad: (count: number) => write(new Uint8Array(count)), finish: () => null };
  tableToIPC(tableFromColumns(columns), { format: 'file', sink });
  take();
  return pieces;
}

/** A table of records from an Arrow IPC file; throws where the bytes are none, or lack a field. */
export function tableFromArrow(definition: TableDefinition, bytes: Uint8Array, rowCount: number): RecordTable {
  const arrow = tableFromIPC(bytes);
  if (arrow.numRows !== rowCount) throw new Error(`${arrow.numRows} rows where ${rowCount} were stored`);
  const batchOf = (name: string): ArrowBatch => {
    const batch = arrow.getChild(name)?.data[0];
    if (batch === undefined) throw new Error(`no column ${name}`);
    return batch as unknown as ArrowBatch;
  };
  const columns = new Map<string, Column>();
  for (const field of definition.fields) columns.set(field.name, columnFromArrow(batchOf(field.name), field));
  const files = textFromArrow(batchOf(sourceFile));
  return {
    definition,
    rowCount,
    columns,
    origin: {
      files: files.dictionary,
      fileOf: files.codes as Uint8Array | Uint16Array,
      lineOf: batchOf(sourceLine).values as Uint32Array,
    },
  };
}

/** A table of no rows. */
export function emptyTable(definition: TableDefinition): RecordTable {
  const columns = definition.fields.map((field): [string, Column] => {
    return [field.name, holdsNumbers(field) ? numberColumn([]) : textColumn([])];
  });
  const origin = { files: [], fileOf: new Uint8Array(0), lineOf: new Uint32Array(0) };
  return { definition, rowCount: 0, columns: new Map(columns), origin };
}
