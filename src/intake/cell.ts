import type { DraftColumn } from './draft.js';
import type { Fault } from './fault.js';
import type { BlockRows } from './row-block.js';

/** Reads the cells of one column into the drafted column behind it. */
export interface Cell {
  readonly column: DraftColumn;
  /** Puts the value at that row, missing where the cell has none or is at fault, and says what was wrong. */
  readonly read: (bytes: Uint8Array, start: number, end: number, row: number) => Fault;
  /**
   * Does the same for one cell of each of some rows, and takes the faults down by the rows' places in their block; false
   * where there was none.
   */
  readonly readMany: (position: number, rows: BlockRows, faults: Uint8Array) => boolean;
  /** How many cells read so far held each text that stands for missing. */
  readonly timesMissing: () => ReadonlyMap<string, number>;
  /** Counts that many cells more with this text, where it stands for missing: cells that need not be read themselves. */
  readonly countMissing: (bytes: Uint8Array, start: number, end: number, times: number) => void;
}

/** Texts that stand for missing, told apart by their bytes. */
export class MissingTexts {
  readonly #texts: readonly Uint8Array[];
  /** How often each was met. */
  readonly #times: Uint32Array;
  /** Whether a text of that many bytes is among them. */
  readonly #lengths: readonly boolean[];

  constructor(texts: readonly string[]) {
    this.#texts = texts.map((text) => Buffer.from(text.trim(), 'utf8'));
    this.#times = new Uint32Array(texts.length);
    const lengths: boolean[] = [];
    for (const { length } of this.#texts) {
      while (lengths.length <= length) lengths.push(false);
      lengths[length] = true;
    }
    this.#lengths = lengths;
  }

  /** Whether the bytes are one of them; if so, that is counted, for as many cells as there are of them. */
  has(bytes: Uint8Array, start: number, end: number, cells = 1): boolean {
    const length = end - start;
    if (length >= this.#lengths.length || this.#lengths[length] !== true) return false;
    const found = this.#texts.findIndex((text) => {
      if (text.length !== length) return false;
      for (let at = 0; at < length; at++) if (text[at] !== bytes[start + at]) return false;
      return true;
    });
    if (found < 0) return false;
    this.#times[found]! += cells;
    return true;
  }

  /** How often each was met, by its text. */
  times(): ReadonlyMap<string, number> {
    return new Map(this.#texts.map((text, at) => [Buffer.from(text).toString('utf8'), this.#times[at]!]));
  }
}

/** Where a cell begins once spaces and tabs before it are left off. */
export function trimmedStart(bytes: Uint8Array, start: number, end: number): number {
  let at = start;
  while (at < end && (bytes[at] === 32 || bytes[at] === 9)) at++;
  return at;
}

/** Where a cell ends once spaces and tabs behind it are left off. */
export function trimmedEnd(bytes: Uint8Array, start: number, end: number): number {
  let at = end;
  while (at > start && (bytes[at - 1] === 32 || bytes[at - 1] === 9)) at--;
  return at;
}
