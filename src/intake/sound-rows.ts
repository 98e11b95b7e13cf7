import { findEndings } from './find-endings.js';
import { saysHeaderAgain } from './header.js';
import type { RecordScanner } from './record-scanner.js';
import { RowBlock } from './row-block.js';
import type { RowEndings } from './row-endings.js';
import type { RowReader } from './row-reader.js';

/** How many rows may be left over before it is asked whether knowing endings is worth it. */
const enough = 1 << 12;
/** It is where at least so many rows are read for each that is left over. */
const worth = 8;

/** Reads the rows of a file that need no care, many at once. */
export class SoundRows {
  readonly #scanner: RecordScanner;
  readonly #rows: RowReader;
  readonly #headerLines: readonly Uint8Array[];
  readonly #width: number;
  #block: RowBlock;
  #endings: RowEndings | null;
  #taken = 0;
  #left = 0;

  /**
   * @param delimiter the byte between cells; the bytes that wait in the scanner tell whether its rows repeat their endings
   * @param width how many cells a row has
   */
  constructor(
    scanner: RecordScanner,
    rows: RowReader,
    headerLines: readonly Uint8Array[],
    delimiter: number,
    width: number,
  ) {
    this.#scanner = scanner;
    this.#rows = rows;
    this.#headerLines = headerLines;
    this.#width = width;
    this.#endings = findEndings(scanner.waiting(), delimiter, rows.columnsRead);
    this.#block = new RowBlock(this.#endings?.cellsBefore ?? width);
    rows.learnEndings(this.#endings);
  }

  /** Reads rows up to the first that needs care, or is not whole at hand; gives how many there are beside repeated headers. */
  read(): number {
    if (++this.#left === enough && this.#endings !== null) this.#askWhetherWorth();
    const block = this.#block;
    let read = 0;
    do {
      if (this.#endings === null) this.#scanner.takeBlock(block);
      else this.#scanner.takeEnded(block, this.#endings);
      read += this.#readBlock(block);
    } while (block.count === block.most);
    this.#taken += read;
    return read;
  }

  #readBlock(block: RowBlock): number {
    let read = 0;
    let first = 0;
    for (let row = 0; row <= block.count; row++) {
      const ends = row === block.count;
      if (!ends && !saysHeaderAgain(block.bytes, block.from[row]!, block.to[row]!, this.#headerLines)) continue;
      if (row > first) this.#rows.readBlock(block, first, row);
      read += row - first;
      first = row + 1;
    }
    return read;
  }

  #askWhetherWorth(): void {
    if (this.#taken < enough * worth) {
      this.#endings = null;
      this.#block = new RowBlock(this.#width);
      this.#rows.learnEndings(null);
    }
    this.#taken = 0;
    this.#left = 0;
  }
}
