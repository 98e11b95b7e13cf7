import { type MissingTexts, trimmedEnd, trimmedStart } from './cell.js';
import type { RecordScanner } from './record-scanner.js';

const space = 32;
const minusSign = 45;

/** A question mark: what stands for numbers of which only one may be told; no setting reads it as a number. */
const severalNumbers = 63;

/** Several cells of a row joined by a space, such as a date and a time that stand in two columns. */
export class JoinedCells {
  bytes: Uint8Array = new Uint8Array(256);
  length = 0;
  /** How many bytes the text of each cell has, its spaces left off. */
  lengths: readonly number[] = [];
  /** Which of them are missing. */
  isMissing: readonly boolean[] = [];

  /**
   * Joins cells of the scanner's row; nothing is joined where all are missing. `onlyFilled` leaves those out that are missing,
   * for texts that a crosswalk maps as a whole.
   */
  take(
    { cells, starts, ends }: RecordScanner,
    positions: readonly number[],
    missing: MissingTexts,
    onlyFilled: boolean,
  ): void {
    const parts = positions.map((position) => {
      const start = trimmedStart(cells, starts[position]!, ends[position]!);
      return cells.subarray(start, trimmedEnd(cells, start, ends[position]!));
    });
    this.lengths = parts.map(({ length }) => length);
    this.isMissing = parts.map((part) => part.length === 0 || missing.has(part, 0, part.length));
    const filled = parts.filter((_, index) => !this.isMissing[index]);
    this.#join(filled.length > 0 && !onlyFilled ? parts : filled);
  }

  #join(parts: readonly Uint8Array[]): void {
    const most = parts.reduce((sum, part) => sum + part.length + 1, 0);
    if (this.bytes.length < most) this.bytes = new Uint8Array(most);
    this.length = 0;
    for (const [index, part] of parts.entries()) {
      if (index > 0) this.bytes[this.length++] = space;
      this.bytes.set(part, this.length);
      this.length += part.length;
    }
  }

  /** Puts a minus before the one cell that is filled where its column is among those; of several filled ones nothing is left to read. */
  sign(minus: ReadonlySet<number>): void {
    const filled = this.isMissing.flatMap((missing, index) => (missing ? [] : [index]));
    if (filled.length > 1) this.#startWith(severalNumbers, 0);
    else if (minus.has(filled[0] ?? -1)) this.#startWith(minusSign, this.length);
  }

  /** Puts a byte before the first of those that are joined; there is room for it, since each cell has some for a space. */
  #startWith(byte: number, kept: number): void {
    this.bytes.copyWithin(1, 0, kept);
    this.bytes[0] = byte;
    this.length = kept + 1;
  }
}
