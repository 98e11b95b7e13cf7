import type { Field, TableName } from '../record/field.js';
import { tableOf, tables } from '../record/tables.js';
import { grown } from './growing.js';
import { Interner } from './interner.js';

/** What became of the row that a key names. */
export const standing = { unknown: 0, setAside: 1, kept: 2 } as const;

/** The keys of one table, numbered alike in that table and in every table that refers to it. */
export class KeySpace {
  readonly interner = new Interner();
  #standings = new Uint8Array(64);

  /** What is known of every key numbered so far, by its number. */
  standings(): Uint8Array {
    if (this.#standings.length < this.interner.size) this.#standings = grown(this.#standings, this.interner.size);
    return this.#standings;
  }

  /** Says that a row with this key was met; a better standing is never lost. */
  mark(code: number, reached: number): void {
    if (code >= this.#standings.length) {
      this.#standings = grown(this.#standings, Math.max(code + 1, this.#standings.length * 2));
    }
    if (this.#standings[code]! < reached) this.#standings[code] = reached;
  }

  /** Says that rows with these keys were met, numbered already and kept or set aside; 0 is none. */
  markRows(codes: Uint32Array, aside: Uint8Array, rows: number): void {
    const standings = this.standings();
    for (let row = 0; row < rows; row++) {
      const code = codes[row]!;
      const reached = aside[row] === 1 ? standing.setAside : standing.kept;
      if (code !== 0 && standings[code]! < reached) standings[code] = reached;
    }
  }
}

const referred = new Set(
  tables.flatMap(({ fields }) => fields.flatMap((field) => (field.type === 'reference' ? [field.to] : []))),
);

/** The texts met in one import, numbered; a reference shares its numbers with the key it points to. */
export class Texts {
  readonly #spaces = new Map<TableName, KeySpace>();
  readonly #interners = new Map<string, Interner>();

  /** The keys of a table. */
  spaceOf(table: TableName): KeySpace {
    let space = this.#spaces.get(table);
    if (space === undefined) {
      space = new KeySpace();
      this.#spaces.set(table, space);
    }
    return space;
  }

  /** The table whose keys a field holds: its own, or the one it refers to; null for other fields. */
  keyTableOf(table: TableName, field: Field): TableName | null {
    if (field.type === 'reference') return field.to;
    return referred.has(table) && tableOf(table).key[0] === field.name ? table : null;
  }

  /** Gives up what only new texts would need, once all of them are numbered. */
  settle(): void {
    for (const { interner } of this.#spaces.values()) interner.settle();
    for (const interner of this.#interners.values()) interner.settle();
  }

  /** The numbering of a field's texts. */
  internerOf(table: TableName, field: Field): Interner {
    const keyTable = this.keyTableOf(table, field);
    if (keyTable !== null) return this.spaceOf(keyTable).interner;
    const name = `${table}.${field.name}`;
    let interner = this.#interners.get(name);
    if (interner === undefined) {
      interner = new Interner();
      this.#interners.set(name, interner);
    }
    return interner;
  }
}
