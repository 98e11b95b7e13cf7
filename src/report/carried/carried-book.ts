import { gather } from '../../finding/book/gather.js';
import { type FieldSource, lazyTable } from '../../finding/book/lazy-table.js';
import { once } from '../../finding/book/once.js';
import type { Book, BookColumn, BookField, BookTable } from '../../record/book.js';
import { codeArray } from '../../record/column.js';
import type { ImportSum } from '../../record/file-sum.js';
import { type PackedNumbers, unpackNumbers } from './packed-numbers.js';

/** A field as the page carries it: its labels as pairs. */
export type CarriedField = Omit<BookField, 'labels'> & {
  readonly labels: readonly (readonly [string, string])[] | null;
};

/**
 * A column as the page carries it. A text column whose texts say nothing but which rows have the same one carries only how
 * many there are. `of parent` is the value of the row's inspection.
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
  | { readonly kind: 'of parent' };

/** A table as the page carries it: every field is known, and those columns are there that the page asks for. */
export interface CarriedTable {
  readonly name: string;
  readonly row: string;
  readonly counted: string;
  readonly rowCount: number;
  readonly fields: readonly CarriedField[];
  readonly columns: readonly (readonly [name: string, column: CarriedColumn])[];
  /** The inspection of each row, by its number; null for a table whose rows belong to none. */
  readonly parent: PackedNumbers | null;
  readonly clusterOf: PackedNumbers | 'of parent' | null;
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
    const parents = table.parent;
    const parentOf = parents === null ? null : once(() => Int32Array.from(unpackNumbers(parents, bytes)));
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
  const columns = new Map(table.columns);
  const ofParent = (field: string): BookColumn => gather(inspections!.column(field), parentOf!());
  return lazyTable({
    name,
    row,
    counted,
    rowCount,
    sources: table.fields.map(
      ({ labels, ...field }): FieldSource => ({
        field: { ...field, labels: labels === null ? null : new Map(labels) },
        build: () => {
          const column = columns.get(field.name);
          if (column === undefined) throw new Error(`this page does not carry ${field.name} of ${name}`);
          return column.kind === 'of parent' ? ofParent(field.name) : unpackColumn(column, bytes);
        },
      }),
    ),
    clusterOf:
      clusterOf === null
        ? null
        : () => {
            if (clusterOf !== 'of parent') return Uint32Array.from(unpackNumbers(clusterOf, bytes));
            const of = inspections!.clusterOf!;
            return Uint32Array.from(parentOf!(), (parent) => of[parent]!);
          },
    origin: null,
  });
}

function unpackColumn(column: Exclude<CarriedColumn, { kind: 'of parent' }>, bytes: Uint8Array): BookColumn {
  switch (column.kind) {
    case 'text': {
      const { dictionary: carried } = column;
      const dictionary =
        typeof carried === 'number'
          ? Array.from({ length: carried }, (_, code) => (code === 0 ? '' : String(code)))
          : carried;
      const codes = codeArray(column.codes.count, dictionary.length);
      codes.set(unpackNumbers(column.codes, bytes));
      return { kind: 'text', codes, dictionary };
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
