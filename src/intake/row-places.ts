import { grown } from './growing.js';

/** How many rows may follow each other before it is told again where one begins. */
const stride = 16;

/** Where rows lie, as it may be handed from one thread to another. */
export interface PackedPlaces {
  readonly size: number;
  readonly rows: Uint32Array;
  readonly lines: Uint32Array;
  readonly offsets: Float64Array;
}

/** The place of a row in its file: its physical line, from 1, and where it begins, in bytes. */
interface RowPlace {
  readonly line: number;
  readonly offset: number;
}

/**
 * On which lines of its file the rows of a draft stand, and where they begin. Rows mostly follow each other line by line, so
 * that only every few of them, and each behind a gap, is told of: a season's places would take as much memory as its keys.
 */
export class RowPlaces {
  #size = 0;
  #rows: Uint32Array = new Uint32Array(64);
  #lines: Uint32Array = new Uint32Array(64);
  #offsets: Float64Array = new Float64Array(64);
  /** The stretch that was asked for last. */
  #last = 0;

  /** Adds a row behind all others. */
  add(row: number, line: number, offset: number): void {
    const last = this.#size - 1;
    if (last >= 0) {
      const since = row - this.#rows[last]!;
      if (since < stride && this.#lines[last]! + since === line) return;
    }
    this.#put(row, line, offset);
  }

  /** Adds rows behind all others, each on the line behind the one before; `starts` says from `from` on where they begin. */
  addLines(row: number, line: number, starts: Int32Array, from: number, to: number, base: number): void {
    for (let at = from; at < to; at += stride) this.add(row + at - from, line + at - from, base + starts[at]!);
  }

  /** The line of a row. */
  lineOf(row: number): number {
    const at = this.#stretchOf(row);
    return this.#lines[at]! + row - this.#rows[at]!;
  }

  /** The place of the nearest row told of, at or before a row: between them each row is one record of the file, on one line. */
  placeBefore(row: number): RowPlace {
    const at = this.#stretchOf(row);
    return { line: this.#lines[at]!, offset: this.#offsets[at]! };
  }

  /** Where one of the last rows begins; 0 before there is any. */
  get lastOffset(): number {
    return this.#size === 0 ? 0 : this.#offsets[this.#size - 1]!;
  }

  /** Calls for each stretch of rows on lines that follow each other: those from `row` up to but without `end`, from `line` on. */
  eachStretch(rows: number, visit: (row: number, end: number, line: number) => void): void {
    for (let at = 0; at < this.#size; at++) {
      visit(this.#rows[at]!, at + 1 < this.#size ? this.#rows[at + 1]! : rows, this.#lines[at]!);
    }
  }

  /** The places as they may be handed from one thread to another. */
  pack(): PackedPlaces {
    return { size: this.#size, rows: this.#rows, lines: this.#lines, offsets: this.#offsets };
  }

  /** Takes over the rows of a later part of the file, whose rows and lines were counted from its own beginning. */
  append({ size, rows, lines, offsets }: PackedPlaces, firstRow: number, linesBefore: number): void {
    for (let at = 0; at < size; at++) this.#put(rows[at]! + firstRow, lines[at]! + linesBefore, offsets[at]!);
  }

  #put(row: number, line: number, offset: number): void {
    const at = this.#size++;
    if (at === this.#rows.length) {
      this.#rows = grown(this.#rows, at * 2);
      this.#lines = grown(this.#lines, at * 2);
      this.#offsets = grown(this.#offsets, at * 2);
    }
    this.#rows[at] = row;
    this.#lines[at] = line;
    this.#offsets[at] = offset;
  }

  #stretchOf(row: number): number {
    const rows = this.#rows;
    let low = 0;
    let high = this.#size - 1;
    // Rows are mostly asked for in their order, so that the next is near: steps from the last one double until they pass it.
    if (rows[this.#last]! <= row) {
      low = this.#last;
      for (let step = 1; low + step <= high; step *= 2) {
        if (rows[low + step]! > row) high = low + step - 1;
        else low += step;
      }
    }
    while (low < high) {
      const middle = (low + high + 1) >>> 1;
      if (rows[middle]! <= row) low = middle;
      else high = middle - 1;
    }
    this.#last = low;
    return low;
  }
}
