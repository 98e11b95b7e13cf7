import { parentRows } from '../../finding/book/parent-rows.js';
import { type AskedColumns, clusterColumn } from '../../finding/book/watched-book.js';
import type { Book, BookColumn, BookTable } from '../../record/book.js';
import type { TextColumn } from '../../record/column.js';
import { fieldOf } from '../../record/field.js';
import { tables as tableDefinitions } from '../../record/tables.js';
import type { CarriedBook, CarriedColumn, CarriedField, CarriedTable } from './carried-book.js';
import { combinations, valueOfEach } from './combinations.js';
import { codesOfPatterns, findLayouts, packLayouts } from './layouts.js';
import { NumberPacker } from './packed-numbers.js';

/** The key by which rows name their inspection; its texts are never carried, only which rows share one. */
const inspectionKey = 'inspection';

/** Whether a field stands for one craft or one person, so that no page carries it, nor anything that could join its rows. */
export function isPseudonym(field: string): boolean {
  return tableDefinitions.some((table) => fieldOf(table, field)?.type === 'pseudonym');
}

/** The fields that a page may offer to choose by: none that stands for craft or people, nor the key of a record. */
export function offeredFields(fields: readonly string[]): readonly string[] {
  return fields.filter((field) => !isPseudonym(field) && field !== inspectionKey);
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

/** The columns that follow from others of the same row, so that these are carried in their place. */
const madeOf: ReadonlyMap<string, readonly string[]> = new Map([
  ['looked', ['state']],
  ['settled', ['state', 'finding']],
  ['hidden', ['component']],
  ['area', ['component']],
  ['setting', ['station']],
]);

/** The columns that a checklist has alike on every craft of its kind. */
const laidOut: readonly string[] = ['component', 'side'];

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
    for (const column of columns) {
      for (const of of madeOf.get(column) ?? []) if (table.fields.has(of)) columns.add(of);
    }
    if (inspections === undefined || !isOfInspections(table, inspections) || columns.size === 0) continue;
    const ofInspections = wanted.get('inspections')!;
    for (const column of columns) {
      if (isFromParent(table, inspections, column)) ofInspections.add(column);
      else if (besides.includes(column) && inspections.fields.has(column)) {
        // Rows are chosen by what their inspection has of such a field, not by their own.
        ofInspections.add(column);
        columns.add(inspectionKey);
      }
    }
    ofInspections.add(inspectionKey);
  }
  const ofInspections = wanted.get('inspections');
  if (ofInspections?.has(clusterColumn)) for (const column of ['station', 'date']) ofInspections.add(column);
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
  const parent =
    inspections !== undefined && wanted.size > 0 && isOfInspections(table, inspections)
      ? parentRows(keysOf(inspections), keysOf(table))
      : null;
  const inLayout = laidOut
    .filter((column) => wanted.has(column))
    .map((column) => [column, textOf(table, column)] as const);
  const found =
    parent === null || inLayout.length === 0
      ? null
      : findLayouts(
          parent,
          inLayout.map(([, own]) => own),
        );
  const columns = [...wanted]
    .filter((column) => column !== clusterColumn)
    .map((column): [string, CarriedColumn] => {
      if (parent !== null && isFromParent(table, inspections!, column)) return [column, { kind: 'of parent' }];
      const [, own] = inLayout.find(([named]) => named === column) ?? [];
      if (found !== null && own !== undefined) {
        const codes = packer.pack(codesOfPatterns(found, own));
        return [column, { kind: 'of layout', dictionary: own.dictionary, codes }];
      }
      const made = packMadeOf(table, column, wanted, packer);
      return [column, made ?? packColumn(table.column(column), column === inspectionKey, packer)];
    });
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
    parent: parent === null ? null : found === null ? packer.pack(parent) : packLayouts(found, packer),
    clusterOf: clusters === null ? null : parent !== null ? 'of parent' : packClusters(table, clusters, wanted, packer),
  };
}

/** A column as what follows from others; null where it does not, or they are not carried. */
function packMadeOf(
  table: BookTable,
  name: string,
  wanted: ReadonlySet<string>,
  packer: NumberPacker,
): CarriedColumn | null {
  const columns = madeOf.get(name);
  if (columns === undefined || !columns.every((column) => wanted.has(column))) return null;
  const { codes, dictionary } = textOf(table, name);
  const found = valueOfEach(combinations(columns.map(table.column), table.rowCount), codes);
  return found === null ? null : { kind: 'made of', columns, dictionary, codes: packer.pack(found) };
}

function packClusters(
  table: BookTable,
  clusters: Uint32Array,
  wanted: ReadonlySet<string>,
  packer: NumberPacker,
): CarriedTable['clusterOf'] {
  if (!wanted.has('station') || !wanted.has('date')) return packer.pack(clusters);
  const days = combinations([table.column('station'), table.column('date')], table.rowCount);
  const found = valueOfEach(days, clusters);
  return found === null ? packer.pack(clusters) : { ofStationAndDate: packer.pack(found) };
}

function keysOf(table: BookTable): TextColumn {
  return textOf(table, inspectionKey);
}

function textOf(table: BookTable, name: string): TextColumn {
  const column = table.column(name);
  if (column.kind !== 'text') throw new Error(`${name} of ${table.name} is no text`);
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
