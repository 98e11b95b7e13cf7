import { type HeldText, textHeld } from '../intake/held-text.js';
import { delimitedCell } from './delimited.js';

const quote = 34;
const comma = 44;
const mostKnown = 4096;

/** What a byte asks of its cell: nothing, quotes, or that the cell be looked at as text. */
const plain = 0;
const quoted = 1;
const asText = 2;

function asks(): { readonly first: Uint8Array; readonly within: Uint8Array } {
  const within = new Uint8Array(256).fill(asText, 0x80);
  for (const letter of '",\r\n') within[letter.charCodeAt(0)] = quoted;
  const first = within.slice();
  // With these begins what a spreadsheet may run, and what was made inert before; with a byte of more than ASCII may, too.
  for (const letter of "=+-@\t\r\n'") first[letter.charCodeAt(0)] = asText;
  return { first, within };
}

const { first: asksFirst, within: asksWithin } = asks();

/**
 * Rows of RFC 4180 text put together as bytes, each cell as `delimitedCell` has it. Most cells are plain letters, which are
 * copied without becoming a string.
 */
export class DelimitedBytes {
  size = 0;
  #bytes: Uint8Array;
  readonly #known = new Map<string, Uint8Array>();

  constructor(room: number) {
    this.#bytes = new Uint8Array(room * 2);
  }

  /** What was put so far; the bytes hold until the next are put. */
  take(): Uint8Array {
    const taken = this.#bytes.subarray(0, this.size);
    this.size = 0;
    return taken;
  }

  /** A cell that is seldom alike another. */
  cell(text: string): void {
    this.#put(Buffer.from(delimitedCell(text), 'utf8'));
  }

  /** A cell whose text repeats from row to row, and is made fit once. */
  repeated(text: string): void {
    let bytes = this.#known.get(text);
    if (bytes === undefined) {
      bytes = Buffer.from(delimitedCell(text), 'utf8');
      if (this.#known.size === mostKnown) this.#known.clear();
      this.#known.set(text, bytes);
    }
    this.#put(bytes);
  }

  /** A cell of a whole number from 0 up. */
  whole(number: number): void {
    this.#makeRoom(20);
    let digits = 1;
    for (let least = 10; least <= number; least *= 10) digits++;
    for (let at = this.size + digits - 1, left = number; at >= this.size; at--, left = Math.floor(left / 10)) {
      this.#bytes[at] = 48 + (left % 10);
    }
    this.size += digits;
  }

  /** A cell from the bytes of its text. */
  cellOf(text: HeldText): void {
    const { bytes, start, end } = text;
    let asked = start < end ? asksFirst[bytes[start]!]! : plain;
    for (let at = start + 1; at < end; at++) asked |= asksWithin[bytes[at]!]!;
    if (asked >= asText) {
      this.cell(textHeld(text));
      return;
    }
    this.#makeRoom((end - start) * 2 + 2);
    const to = this.#bytes;
    let size = this.size;
    if (asked === quoted) to[size++] = quote;
    for (let at = start; at < end; at++) {
      const byte = bytes[at]!;
      if (byte === quote) to[size++] = quote;
      to[size++] = byte;
    }
    if (asked === quoted) to[size++] = quote;
    this.size = size;
  }

  /** What stands between two cells. */
  next(): void {
    this.#end(comma);
  }

  /** The end of a row. */
  endRow(): void {
    this.#end(10);
  }

  #end(byte: number): void {
    this.#makeRoom(1);
    this.#bytes[this.size++] = byte;
  }

  #put(bytes: Uint8Array): void {
    this.#makeRoom(bytes.length);
    if (bytes.length > 64) this.#bytes.set(bytes, this.size);
    else for (let at = 0; at < bytes.length; at++) this.#bytes[this.size + at] = bytes[at]!;
    this.size += bytes.length;
  }

  #makeRoom(count: number): void {
    if (this.size + count <= this.#bytes.length) return;
    const wide = new Uint8Array(Math.max(this.size + count, this.#bytes.length * 2));
    wide.set(this.#bytes.subarray(0, this.size));
    this.#bytes = wide;
  }
}
