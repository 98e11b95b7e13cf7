import { type MissingTexts, trimmedEnd, trimmedStart } from './cell.js';
import type { RecordScanner } from './record-scanner.js';

const space = 32;

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
}
