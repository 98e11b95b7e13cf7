import type { Growable } from './growing.js';

/** A set of rows of several drafts, equal when all the columns named hold equal values. */
export class RowSet {
  /** By draft: the columns compared. */
  readonly #columns: readonly (readonly Growable[])[];
  #slots = new Int32Array(256);
  #drafts = new Uint16Array(128);
  #rows = new Uint32Array(128);
  #hashes = new Int32Array(128);
  #size = 0;

  constructor(columns: readonly (readonly Growable[])[]) {
    this.#columns = columns;
  }

  /** Adds a row, and says so; false where an equal row is there already. */
  add(draft: number, row: number): boolean {
    const columns = this.#columns[draft]!;
    let hash = 0x811c9dc5 | 0;
    for (const values of columns) {
      const value = values[row]!;
      hash = Math.imul(hash ^ (value % 0x7fffffff), 0x01000193);
      hash = Math.imul(hash ^ Math.floor(value / 0x7fffffff) ^ (hash >>> 13), 0x5bd1e995);
    }
    const mask = this.#slots.length - 1;
    let slot = (hash ^ (hash >>> 15)) & mask;
    for (;;) {
      const entry = this.#slots[slot]! - 1;
      if (entry < 0) break;
      if (this.#hashes[entry] === hash && this.#isEqual(columns, row, entry)) return false;
      slot = (slot + 1) & mask;
    }
    this.#put(draft, row, hash);
    this.#slots[slot] = this.#size;
    if (this.#size * 2 > this.#slots.length) this.#widen();
    return true;
  }

  #isEqual(columns: readonly Growable[], row: number, entry: number): boolean {
    const others = this.#columns[this.#drafts[entry]!]!;
    const other = this.#rows[entry]!;
    for (let index = 0; index < columns.length; index++) {
      if (columns[index]![row] !== others[index]![other]) return false;
    }
    return true;
  }

  #put(draft: number, row: number, hash: number): void {
    if (this.#size === this.#rows.length) {
      const length = this.#size * 2;
      const wider = <A extends Uint16Array | Uint32Array | Int32Array>(old: A, wide: A): A => {
        wide.set(old);
        return wide;
      };
      this.#drafts = wider(this.#drafts, new Uint16Array(length));
      this.#rows = wider(this.#rows, new Uint32Array(length));
      this.#hashes = wider(this.#hashes, new Int32Array(length));
    }
    this.#drafts[this.#size] = draft;
    this.#rows[this.#size] = row;
    this.#hashes[this.#size] = hash;
    this.#size++;
  }

  #widen(): void {
    const slots = new Int32Array(this.#slots.length * 2);
    const mask = slots.length - 1;
    for (let entry = 0; entry < this.#size; entry++) {
      const hash = this.#hashes[entry]!;
      let slot = (hash ^ (hash >>> 15)) & mask;
      while (slots[slot] !== 0) slot = (slot + 1) & mask;
      slots[slot] = entry + 1;
    }
    this.#slots = slots;
  }
}
