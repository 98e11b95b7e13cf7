import { parentRows } from '../../finding/book/parent-rows.js';
import { type AskedColumns, clusterColumn } from '../../finding/book/watched-book.js';
import type { Book, BookColumn, BookTable } from '../../record/book.js';
import type { TextColumn } from '../../record/column.js';
import { fieldOf } from '../../record/field.js';
import { tables as tableDefinitions } from '../../record/tables.js';
import type { CarriedBook, CarriedColumn, CarriedField, CarriedTable } from './carried-book.js';
import { NumberPacker } from './packed-numbers.js';

/** The key by which rows name their inspection; its texts are never carried, only which rows share one. */
const inspectionKey = 'inspection';

/** Whether a field stands for one craft or one person, so that no page carries it, nor anything that could join its rows. */
export function isPseudonym(field: string): boolean {
  return tableDefinitions.some((table) => fieldOf(table, field)?.type === 'pseudonym');
}

/**
 * The columns asked for, and those named besides, packed so that the same book can be made of them. No place in a file, no
 * pseudonym and no key of a record is carried; rows stay in their order, since station-days are numbered as they appear.
 */
export function packBook(
  book: Book,
  asked: AskedColumns,
  besides: readonly string[],
): { readonly book: CarriedBook; readonly bytes: Uint8Array } {
  const packer = new NumberPacker();
  const inspections = book.tables.get('inspections');
  const wanted = wantedColumns(book, asked, besides);
  const tables = [...book.tables.values()].map((table) =>
    packTable(table, wanted.get(table.name)!, inspections, packer),
  );
  const { count, stratumOf } = book.clusters;
  return {
    book: { tables, clusters: { count, stratumOf: packer.pack(stratumOf) }, sum: book.sum },
    bytes: packer.bytes(),
  };
}

/** The columns to carry of each table; what rows have from their inspection is wanted of the inspections too. */
function wantedColumns(
  book: Book,
  asked: AskedColumns,
  besides: readonly string[],
): ReadonlyMap<string, ReadonlySet<string>> {
  const inspections = book.tables.get('inspections');
  const wanted = new Map<string, Set<string>>();
  for (const [name, table] of book.tables) {
    const own = asked.get(name);
    const columns = [...(own?.keys() ?? []), ...(own === undefined ? [] : besides)];
    wanted.set(name, new Set(columns.filter((column) => column === clusterColumn || table.fields.has(column))));
  }
  for (const [name, columns] of wanted) {
    const table = book.tables.get(name)!;
    if (inspections === undefined || !isOfInspections(table, inspections) || columns.size === 0) continue;
    const ofInspections = wanted.get('inspections')!;
    for (const column of columns) if (isFromParent(table, inspections, column)) ofInspections.add(column);
    ofInspections.add(inspectionKey);
  }
  return wanted;
}

function isOfInspections(table: BookTable, inspections: BookTable): boolean {
  return table !== inspections && table.fields.has('extent') && table.fields.has(inspectionKey);
}

/** Whether a column is the inspection's: its field is then the same one. */
function isFromParent(table: BookTable, inspections: BookTable, column: string): boolean {
  if (column === clusterColumn || column === inspectionKey) return true;
  return table.fields.get(column) === inspections.fields.get(column);
}

function packTable(
  table: BookTable,
  wanted: ReadonlySet<string>,
  inspections: BookTable | undefined,
  packer: NumberPacker,
): CarriedTable {
  const { name, row, counted, rowCount } = table;
  const isChild = inspections !== undefined && wanted.size > 0 && isOfInspections(table, inspections);
  const columns = [...wanted]
    .filter((column) => column !== clusterColumn)
    .map((column): [string, CarriedColumn] => [
      column,
      isChild && isFromParent(table, inspections, column)
        ? { kind: 'of parent' }
        : packColumn(table.column(column), column === inspectionKey, packer),
    ]);
  const clusters = wanted.has(clusterColumn) ? table.clusterOf : null;
  return {
    name,
    row,
    counted,
    rowCount,
    fields: [...table.fields.values()].map(
      ({ labels, ...field }): CarriedField => ({ ...field, labels: labels === null ? null : [...labels] }),
    ),
    columns,
    parent: isChild ? packer.pack(parentRows(keysOf(inspections), keysOf(table))) : null,
    clusterOf: clusters === null ? null : isChild ? 'of parent' : packer.pack(clusters),
  };
}

function keysOf(table: BookTable): TextColumn {
  const column = table.column(inspectionKey);
  if (column.kind !== 'text') throw new Error(`${table.name} names its inspections by something else than text`);
  return column;
}

function packColumn(column: BookColumn, isKey: boolean, packer: NumberPacker): CarriedColumn {
  switch (column.kind) {
    case 'text':
      return {
        kind: 'text',
        dictionary: isKey ? column.dictionary.length : column.dictionary,
        codes: packer.pack(column.codes),
      };
    case 'number': {
      const { values, missing } = column;
      return {
        kind: 'number',
        array: values instanceof Int32Array ? 'whole' : 'float',
        values: packer.pack(values),
        missing: missing === null ? null : packer.pack(missing),
      };
    }
    case 'wait':
      return { kind: 'wait', minutes: packer.pack(column.minutes), ending: packer.pack(column.ending) };
  }
}
