import { BytePool } from './byte-pool.js';
import { grown } from './growing.js';
import type { HeldText } from './held-text.js';
import { orderOf } from './order-of.js';

const withheldText = Buffer.from('withheld');

/** Rows set aside as columns of plain values: the bytes of each end where `ends` says. */
export interface PackedAsideTexts {
  readonly size: number;
  readonly lines: Uint32Array;
  readonly ends: Uint32Array;
  readonly bytes: Uint8Array;
}

/** The rows set aside of one file, as they stand in it, private cells withheld; kept as bytes until a ledger is written. */
export class AsideTexts {
  size = 0;
  #lines: Uint32Array = new Uint32Array(64);
  #ends: Uint32Array = new Uint32Array(64);
  readonly #texts = new BytePool();

  /** Adds the row between two places of a file's bytes, the cells at the bounds given withheld. */
  add(
    line: number,
    bytes: Uint8Array,
    start: number,
    end: number,
    withheld: readonly (readonly [start: number, end: number])[],
  ): void {
    let from = start;
    for (const [cellStart, cellEnd] of withheld) {
      this.#texts.add(bytes, from, cellStart);
      this.#texts.add(withheldText, 0, withheldText.length);
      from = cellEnd;
    }
    this.#texts.add(bytes, from, end);
    this.#end(line);
  }

  /** Adds a row of which nothing may be shown. */
  addWithheld(line: number): void {
    this.#texts.add(withheldText, 0, withheldText.length);
    this.#end(line);
  }

  /** Makes room for so many rows more, of so many bytes. */
  expect(rows: number, bytes: number): void {
    this.#texts.expect(bytes);
    if (this.size + rows > this.#lines.length) {
      this.#lines = grown(this.#lines, this.size + rows);
      this.#ends = grown(this.#ends, this.size + rows);
    }
  }

  /** The physical line on which a row begins. */
  line(at: number): number {
    return this.#lines[at]!;
  }

  /** A row as a ledger may show it, as bytes. */
  textBytes(at: number): HeldText {
    return { bytes: this.#texts.bytes, start: at === 0 ? 0 : this.#ends[at - 1]!, end: this.#ends[at]! };
  }

  /** The rows in order of line. */
  inOrder(): Uint32Array {
    return orderOf(this.#lines.subarray(0, this.size));
  }

  /** The lines of all rows. */
  lines(): ReadonlySet<number> {
    return new Set(this.#lines.subarray(0, this.size));
  }

  /** The rows as they may be handed from one thread to another. */
  pack(): PackedAsideTexts {
    return { size: this.size, lines: this.#lines, ends: this.#ends, bytes: this.#texts.bytes };
  }

  /** Takes over the rows of a later part of the file, whose lines were counted from its own beginning. */
  append({ size, lines, ends, bytes }: PackedAsideTexts, linesBefore: number): void {
    if (size > 0) this.expect(size, ends[size - 1]!);
    for (let at = 0; at < size; at++) {
      this.#texts.add(bytes, at === 0 ? 0 : ends[at - 1]!, ends[at]!);
      this.#end(lines[at]! + linesBefore);
    }
  }

  #end(line: number): void {
    const at = this.size++;
    if (at === this.#lines.length) {
      this.#lines = grown(this.#lines, at * 2);
      this.#ends = grown(this.#ends, at * 2);
    }
    this.#lines[at] = line;
    this.#ends[at] = this.#texts.size;
  }
}
