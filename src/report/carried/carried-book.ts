import { gather } from '../../finding/book/gather.js';
import { type FieldSource, lazyTable } from '../../finding/book/lazy-table.js';
import { once } from '../../finding/book/once.js';
import type { Book, BookColumn, BookField, BookTable } from '../../record/book.js';
import { codeArray, type TextColumn } from '../../record/column.js';
import type { ImportSum } from '../../record/file-sum.js';
import { combinations } from './combinations.js';
import { codesOfRows, type PackedLayouts, parentsOf } from './layouts.js';
import { type PackedNumbers, unpackNumbers } from './packed-numbers.js';

/** A field as the page carries it: its labels as pairs. */
export type CarriedField = Omit<BookField, 'labels'> & {
  readonly labels: readonly (readonly [string, string])[] | null;
};

/**
 * A column as the page carries it. A text column whose texts say nothing but which rows have the same one carries only how
 * many there are. `of parent` is the value of the row's inspection, `of layout` that of its place in a checklist, and `made
 * of` follows from other columns of the row.
 */
export type CarriedColumn =
  | { readonly kind: 'text'; readonly dictionary: readonly string[] | number; readonly codes: PackedNumbers }
  | {
      readonly kind: 'number';
      readonly array: 'float' | 'whole';
      readonly values: PackedNumbers;
      readonly missing: PackedNumbers | null;
    }
  | { readonly kind: 'wait'; readonly minutes: PackedNumbers; readonly ending: PackedNumbers }
  | { readonly kind: 'of parent' }
  | { readonly kind: 'of layout'; readonly dictionary: readonly string[]; readonly codes: PackedNumbers }
  | {
      readonly kind: 'made of';
      readonly columns: readonly string[];
      readonly dictionary: readonly string[];
      /** One for each combination of the columns' values, in the order in which the rows have them. */
      readonly codes: PackedNumbers;
    };

/** A table as the page carries it: every field is known, and those columns are there that the page asks for. */
export interface CarriedTable {
  readonly name: string;
  readonly row: string;
  readonly counted: string;
  readonly rowCount: number;
  readonly fields: readonly CarriedField[];
  readonly columns: readonly (readonly [name: string, column: CarriedColumn])[];
  /** The inspection of each row, by its number or by how rows are laid out; null for a table whose rows belong to none. */
  readonly parent: PackedNumbers | PackedLayouts | null;
  /** The station-day of each row: plainly, by its station and date, or its inspection's. */
  readonly clusterOf: PackedNumbers | { readonly ofStationAndDate: PackedNumbers } | 'of parent' | null;
}

/** A book as the page carries it, but for its bytes. */
export interface CarriedBook {
  readonly tables: readonly CarriedTable[];
  readonly clusters: { readonly count: number; readonly stratumOf: PackedNumbers };
  readonly sum: ImportSum;
}

/** The book that a page carries. A column is unpacked when it is first asked for; one that is not carried throws. */
export function unpackBook({ tables: carried, clusters, sum }: CarriedBook, bytes: Uint8Array): Book {
  const tables = new Map<string, BookTable>();
  for (const table of carried) {
    const { parent, rowCount } = table;
    const parentOf =
      parent === null
        ? null
        : once(() =>
            'at' in parent ? Int32Array.from(unpackNumbers(parent, bytes)) : parentsOf(parent, rowCount, bytes),
          );
    tables.set(table.name, unpackTable(table, parentOf, tables.get('inspections'), bytes));
  }
  return {
    tables,
    clusters: { count: clusters.count, stratumOf: Uint32Array.from(unpackNumbers(clusters.stratumOf, bytes)) },
    sum,
  };
}

function unpackTable(
  table: CarriedTable,
  parentOf: (() => Int32Array) | null,
  inspections: BookTable | undefined,
  bytes: Uint8Array,
): BookTable {
  const { name, row, counted, rowCount, clusterOf } = table;
  const carried = new Map(table.columns);
  const made: BookTable = lazyTable({
    name,
    row,
    counted,
    rowCount,
    sources: table.fields.map(
      ({ labels, ...field }): FieldSource => ({
        field: { ...field, labels: labels === null ? null : new Map(labels) },
        build: () => columnOf(field.name),
      }),
    ),
    clusterOf: clusterOf === null ? null : () => clustersOf(clusterOf),
    origin: null,
    ...(parentOf === null || inspections === undefined
      ? {}
      : {
          parent: {
            table: inspections,
            gives: (field) => carried.get(field)?.kind === 'of parent',
            rowOf: parentOf,
          },
        }),
  });
  const columnOf = (field: string): BookColumn => {
    const column = carried.get(field);
    if (column === undefined) throw new Error(`this page does not carry ${field} of ${name}`);
    switch (column.kind) {
      case 'of parent':
        return gather(inspections!.column(field), parentOf!());
      case 'of layout': {
        const ofPatterns = unpackNumbers(column.codes, bytes);
        return coded(codesOfRows(table.parent as PackedLayouts, ofPatterns, rowCount, bytes), column.dictionary);
      }
      case 'made of': {
        const { of } = combinations(column.columns.map(made.column), rowCount);
        return coded(ofEach(unpackNumbers(column.codes, bytes), of), column.dictionary);
      }
      default:
        return unpackColumn(column, bytes);
    }
  };
  const clustersOf = (packed: NonNullable<CarriedTable['clusterOf']>): Uint32Array => {
    if (packed === 'of parent') return ofEach(inspections!.clusterOf!, parentOf!());
    if ('at' in packed) return Uint32Array.from(unpackNumbers(packed, bytes));
    const { of } = combinations([made.column('station'), made.column('date')], rowCount);
    return ofEach(unpackNumbers(packed.ofStationAndDate, bytes), of);
  };
  return made;
}

function ofEach(values: ArrayLike<number>, of: ArrayLike<number>): Uint32Array {
  const out = new Uint32Array(of.length);
  for (let row = 0; row < out.length; row++) out[row] = values[of[row]!]!;
  return out;
}

function coded(wide: ArrayLike<number>, dictionary: readonly string[]): TextColumn {
  const codes = codeArray(wide.length, dictionary.length);
  codes.set(wide);
  return { kind: 'text', codes, dictionary };
}

function unpackColumn(
  column: Extract<CarriedColumn, { kind: 'text' | 'number' | 'wait' }>,
  bytes: Uint8Array,
): BookColumn {
  switch (column.kind) {
    case 'text': {
      const { dictionary: carried } = column;
      const dictionary =
        typeof carried === 'number'
          ? Array.from({ length: carried }, (_, code) => (code === 0 ? '' : String(code)))
          : carried;
      return coded(unpackNumbers(column.codes, bytes), dictionary);
    }
    case 'number': {
      const values = unpackNumbers(column.values, bytes);
      return {
        kind: 'number',
        values: column.array === 'whole' ? Int32Array.from(values) : values,
        missing: column.missing === null ? null : Uint8Array.from(unpackNumbers(column.missing, bytes)),
      };
    }
    case 'wait':
      return {
        kind: 'wait',
        minutes: unpackNumbers(column.minutes, bytes),
        ending: Uint8Array.from(unpackNumbers(column.ending, bytes)),
      };
  }
}
