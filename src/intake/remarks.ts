import { BytePool } from './byte-pool.js';
import { grown } from './growing.js';
import type { HeldText } from './held-text.js';
import { orderOf } from './order-of.js';
import type { Follows, Saying } from './remark.js';

const none = -1;
const mostPlaces = 4096;
/** More than any row has columns. */
const mostPositions = 1 << 17;
/** The mark of a cell whose text must be fetched from the file once more. */
const notAtHand = 0xffffffff;

/** Remarks as columns of plain values. */
export interface PackedRemarks {
  readonly size: number;
  readonly sayings: readonly Saying[];
  readonly lines: Uint32Array;
  readonly rows: Int32Array;
  readonly positions: Int32Array;
  readonly sayingOf: Uint32Array;
  readonly notes: Uint8Array;
  readonly from: Uint32Array;
  readonly to: Uint32Array;
  readonly seen: Uint8Array;
}

/** What is found about the rows of one file, as columns: a season's exports may hold half a million slips. */
export class Remarks {
  size = 0;
  /** The sayings, each once. */
  readonly sayings: Saying[] = [];
  #places = new Map<Saying, number>();
  #byText = new Map<string, number>();
  #lines: Uint32Array = new Uint32Array(64);
  #rows: Int32Array = new Int32Array(64);
  #positions: Int32Array = new Int32Array(64);
  #sayings: Uint32Array = new Uint32Array(64);
  #notes: Uint8Array = new Uint8Array(64);
  #from: Uint32Array = new Uint32Array(64);
  #to: Uint32Array = new Uint32Array(64);
  readonly #seen = new BytePool();
  #order: Uint32Array = new Uint32Array(0);

  /**
   * Takes one down.
   * @param row the row's place in the draft; null for a row that never got there
   * @param position the column's place in the header, from 0; null for the row as a whole
   * @param seen the cell as a ledger may show it; null when it is to be fetched later
   */
  add(
    saying: Saying,
    severity: Follows,
    line: number,
    row: number | null,
    position: number | null,
    seen: string | null,
  ): void {
    const at = this.size++;
    if (at === this.#lines.length) this.#widen(at * 2);
    this.#lines[at] = line;
    this.#rows[at] = row ?? none;
    this.#positions[at] = position ?? none;
    this.#sayings[at] = this.#placeOf(saying);
    this.#notes[at] = severity === 'notes' ? 1 : 0;
    if (seen === null) this.#from[at] = notAtHand;
    else this.putSeen(at, seen);
  }

  /** Whether the remark sets its row aside; otherwise it only notes something. */
  setsAside(at: number): boolean {
    return this.#notes[at] === 0;
  }

  line(at: number): number {
    return this.#lines[at]!;
  }

  row(at: number): number | null {
    return this.#rows[at]! === none ? null : this.#rows[at]!;
  }

  position(at: number): number | null {
    return this.#positions[at]! === none ? null : this.#positions[at]!;
  }

  saying(at: number): Saying {
    return this.sayings[this.#sayings[at]!]!;
  }

  /** The cell as a ledger may show it; null while it is not at hand. */
  seen(at: number): string | null {
    const from = this.#from[at]!;
    return from === notAtHand ? null : this.#seen.textOf(from, this.#to[at]!);
  }

  /** The cell as a ledger may show it, as bytes; none while it is not at hand. */
  seenBytes(at: number): HeldText {
    const from = this.#from[at]!;
    if (from === notAtHand) return { bytes: this.#seen.bytes, start: 0, end: 0 };
    return { bytes: this.#seen.bytes, start: from, end: this.#to[at]! };
  }

  /** Whether the cell's text must be fetched. */
  lacksSeen(at: number): boolean {
    return this.#from[at] === notAtHand;
  }

  /** Puts a cell's text. */
  putSeen(at: number, seen: string): void {
    this.#from[at] = this.#seen.size;
    if (seen !== '') this.#seen.addText(seen);
    this.#to[at] = this.#seen.size;
  }

  /** Puts a cell's text from bytes. */
  putSeenBytes(at: number, bytes: Uint8Array, start: number, end: number): void {
    this.#from[at] = this.#seen.size;
    this.#seen.add(bytes, start, end);
    this.#to[at] = this.#seen.size;
  }

  /** The remarks in order of line and column, those of one cell as they were made. */
  inOrder(): Uint32Array {
    if (this.#order.length === this.size) return this.#order;
    const lines = this.#lines;
    const positions = this.#positions;
    // One number tells the order, and the place at which it was made settles what is alike.
    const keys = new Float64Array(this.size);
    for (let at = 0; at < this.size; at++) keys[at] = lines[at]! * mostPositions + positions[at]! + 1;
    this.#order = orderOf(keys);
    return this.#order;
  }

  /** The remarks as they may be handed from one thread to another. */
  pack(): PackedRemarks {
    return {
      size: this.size,
      // A rule that was broken says more than its words, and cannot leave its thread.
      sayings: this.sayings.map(({ code, reason, remedy }) => ({ code, reason, remedy })),
      lines: this.#lines,
      rows: this.#rows,
      positions: this.#positions,
      sayingOf: this.#sayings,
      notes: this.#notes,
      from: this.#from,
      to: this.#to,
      seen: this.#seen.bytes,
    };
  }

  /** Takes over the remarks on a later part of the file, whose rows and lines were counted from its own beginning. */
  append(part: PackedRemarks, firstRow: number, linesBefore: number): void {
    for (let at = 0; at < part.size; at++) {
      const row = part.rows[at]!;
      const position = part.positions[at]!;
      const severity = part.notes[at] === 1 ? 'notes' : 'sets aside';
      const line = part.lines[at]! + linesBefore;
      const own = this.size;
      this.add(
        part.sayings[part.sayingOf[at]!]!,
        severity,
        line,
        row === none ? null : row + firstRow,
        position === none ? null : position,
        part.from[at] === notAtHand ? null : '',
      );
      if (part.from[at] === notAtHand) continue;
      this.#seen.add(part.seen, part.from[at]!, part.to[at]!);
      this.#to[own] = this.#seen.size;
    }
  }

  #placeOf(saying: Saying): number {
    const known = this.#places.get(saying);
    if (known !== undefined) return known;
    const text = `${saying.code}\n${saying.reason}\n${saying.remedy}`;
    let place = this.#byText.get(text);
    if (place === undefined) {
      place = this.sayings.length;
      this.sayings.push(saying);
      this.#byText.set(text, place);
    }
    // Known by itself next time; a file has few sayings, and far more remarks.
    if (this.#places.size === mostPlaces) this.#places.clear();
    this.#places.set(saying, place);
    return place;
  }

  #widen(length: number): void {
    this.#lines = grown(this.#lines, length);
    this.#rows = grown(this.#rows, length);
    this.#positions = grown(this.#positions, length);
    this.#sayings = grown(this.#sayings, length);
    this.#notes = grown(this.#notes, length);
    this.#from = grown(this.#from, length);
    this.#to = grown(this.#to, length);
  }
}
