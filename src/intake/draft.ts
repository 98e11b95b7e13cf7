import { type Field, fieldOf, type TableDefinition } from '../record/field.js';
import type { FieldRule, Fold } from './crosswalk.js';
import { type Growable, grown } from './growing.js';
import type { Interner } from './interner.js';
import type { Texts } from './key-space.js';
import { RowPlaces } from './row-places.js';

const firstRows = 1024;
/** Memory that is not used yet costs nothing, while what is used must be moved. */
const mostGrowth = 1 << 14;

/** The mark of a missing date among day numbers. */
export const noDay = -0x80000000;

/** The values of one field before the rows are accepted; codes by their place in the code list from 1, 0 for missing. */
export class DraftColumn {
  readonly field: Field;
  /** The numbering of its texts; null for codes of a list, and for numbers. */
  readonly interner: Interner | null;
  /** Day numbers miss by `noDay`, other numbers by NaN; nothing outside the intake sees either. */
  values: Growable;

  constructor(field: Field, interner: Interner | null) {
    this.field = field;
    this.interner = interner;
    if (field.type === 'code') this.values = new Uint8Array(firstRows);
    else if (field.type === 'date') this.values = new Int32Array(firstRows);
    else if (interner !== null) this.values = new Uint32Array(firstRows);
    else this.values = new Float64Array(firstRows);
  }
}

/** The rows read from one file for one table, kept or not. */
export class Draft {
  readonly table: TableDefinition;
  /** The file's place in the order of reading. */
  readonly file: number;
  readonly fields: readonly FieldRule[];
  readonly columns = new Map<string, DraftColumn>();
  readonly fold: Fold | null;
  rowCount = 0;
  /** On which lines the rows stand, and where they begin in their file. */
  places = new RowPlaces();
  /** 1 where a row is set aside. */
  aside: Uint8Array = new Uint8Array(firstRows);
  /** What each cell of a wide checklist says, row by row: places in the fold's values, from 1. */
  folded: Uint16Array = new Uint16Array(0);
  /** The keys, by their numbers, of rows set aside before they could come into the draft. */
  readonly lostKeys: number[] = [];
  #capacity = firstRows;
  readonly #bytes: number;
  readonly #from: number;

  /**
   * @param bytes how many bytes of the file its rows are read from
   * @param from where they begin
   */
  constructor(
    table: TableDefinition,
    file: number,
    bytes: number,
    fields: readonly FieldRule[],
    fold: Fold | null,
    from = 0,
  ) {
    this.table = table;
    this.file = file;
    this.fields = fields;
    this.fold = fold;
    this.#bytes = bytes;
    this.#from = from;
    if (fold !== null) this.folded = new Uint16Array(firstRows * fold.columns.length);
  }

  /** The column of a field, begun when it is not there yet. */
  columnOf(field: Field, texts: Texts): DraftColumn {
    let column = this.columns.get(field.name);
    if (column === undefined) {
      const holdsText = field.type === 'text' || field.type === 'pseudonym' || field.type === 'reference';
      column = new DraftColumn(field, holdsText ? texts.internerOf(this.table.name, field) : null);
      this.columns.set(field.name, column);
    }
    return column;
  }

  /** The column of a field by its name, begun when it is not there yet. */
  columnNamed(name: string, texts: Texts): DraftColumn {
    const field = this.fields.find((rule) => rule.field.name === name)?.field ?? fieldOf(this.table, name);
    if (field === null) throw new Error(`${this.table.name} has no field ${name}`);
    return this.columnOf(field, texts);
  }

  /** Begins a draft of exactly that many rows, whose places, fates and values are put in by the caller. */
  begin(rows: number): void {
    this.rowCount = this.#capacity = rows;
    this.aside = new Uint8Array(rows);
    if (this.fold !== null) this.folded = new Uint16Array(rows * this.fold.columns.length);
  }

  /** Takes over the fates of rows that were read elsewhere; their places and values are put in by the caller. */
  adopt(rows: number, aside: Uint8Array, folded: Uint16Array): void {
    this.rowCount = this.#capacity = rows;
    this.aside = aside;
    this.folded = folded;
  }

  /** Gives up all but which rows are set aside, once the rest has gone into tables. */
  release(): void {
    this.columns.clear();
    this.places = new RowPlaces();
    this.folded = new Uint16Array(0);
  }

  /** Makes room for one row more, or several. */
  makeRoom(rows = 1): void {
    if (this.rowCount + rows <= this.#capacity) return;
    // What is left of the bytes tells how many rows to expect, so that hardly any column is ever moved.
    const read = this.rowCount === 0 ? this.#bytes : this.places.lastOffset - this.#from + 1;
    const expected = (this.rowCount / read) * this.#bytes * 1.05;
    const { ceil, min, max } = Math;
    const wanted = min(max(expected, this.#capacity * 1.1), this.#capacity * mostGrowth);
    this.#capacity = ceil(max(wanted, this.rowCount + rows));
    this.aside = grown(this.aside, this.#capacity);
    if (this.fold !== null) this.folded = grown(this.folded, this.#capacity * this.fold.columns.length);
    for (const column of this.columns.values()) column.values = grown(column.values, this.#capacity);
  }
}
