import type { RecordScanner } from './record-scanner.js';

/** What stands for numbers of which only one may be told; no setting reads it as a number. */
const severalNumbers = '?';

/** Several cells of a row joined by a space, such as a date and a time that stand in two columns. */
export class JoinedCells {
  bytes: Buffer = Buffer.alloc(256);
  length = 0;
  /** The texts of the cells, their spaces left off. */
  parts: readonly string[] = [];
  /** Which of them are missing. */
  isMissing: readonly boolean[] = [];

  /**
   * Joins cells of the scanner's row; nothing is joined where all are missing. `onlyFilled` leaves those out that are missing,
   * for texts that a crosswalk maps as a whole.
   */
  take(
    { cells, starts, ends }: RecordScanner,
    positions: readonly number[],
    missing: readonly string[],
    onlyFilled: boolean,
  ): void {
    this.parts = positions.map((position) => {
      const text = Buffer.from(cells.buffer, cells.byteOffset + starts[position]!, ends[position]! - starts[position]!);
      return text.toString('latin1').trim();
    });
    this.isMissing = this.parts.map((part) => part === '' || missing.includes(part));
    const taken = onlyFilled ? this.parts.filter((_, index) => !this.isMissing[index]) : this.parts;
    const joined = this.isMissing.includes(false) ? taken.join(' ') : '';
    if (this.bytes.length < joined.length) this.bytes = Buffer.alloc(joined.length);
    this.length = this.bytes.write(joined, 'latin1');
  }

  /** Puts a minus before the one cell that is filled where its column is among those; of several filled ones nothing is left to read. */
  sign(minus: ReadonlySet<number>): void {
    const filled = this.isMissing.flatMap((missing, index) => (missing ? [] : [index]));
    if (filled.length > 1) this.length = this.bytes.write(severalNumbers, 'latin1');
    else if (minus.has(filled[0] ?? -1)) this.length = this.bytes.write(`-${this.parts[filled[0]!]}`, 'latin1');
  }
}
