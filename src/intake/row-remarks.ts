import { isUtf8 } from 'node:buffer';
import { AsideTexts } from './aside-texts.js';
import type { Draft } from './draft.js';
import type { RecordScanner } from './record-scanner.js';
import type { Follows, Saying } from './remark.js';
import { Remarks } from './remarks.js';
import { sayingOf } from './rules/saying-of.js';
import { type Encoding, encodingName } from './source/encoding.js';

/** Takes down what is wrong with the row that a scanner is at, and keeps the text of each row set aside. */
export class RowRemarks {
  readonly remarks = new Remarks();
  readonly asideTexts = new AsideTexts();
  readonly #scanner: RecordScanner;
  readonly #draft: Draft;
  /** Where the header's private columns stand, in order. */
  readonly #withheld: readonly number[];
  readonly #width: number;

  constructor(scanner: RecordScanner, draft: Draft, withheld: readonly number[], width: number) {
    this.#scanner = scanner;
    this.#draft = draft;
    this.#withheld = withheld;
    this.#width = width;
  }

  /** Remarks on a row of the draft, at a column of the header or as a whole. */
  add(row: number, position: number | null, saying: Saying, severity: Follows = 'sets aside'): void {
    if (severity === 'sets aside') this.#draft.aside[row] = 1;
    const seen = position === null ? '' : this.seen(position);
    this.#put(saying, severity, row, position, seen);
  }

  /** The row has too many cells, or too few. */
  ragged(): void {
    const { count } = this.#scanner;
    const saying: Saying = {
      code: 'ragged-row',
      reason: `${count} cells where the header has ${this.#width}`,
      remedy: 'Look for a delimiter in a cell that is not quoted, or for a row cut off.',
    };
    this.#setAsideWhole(saying, `${count} ${count === 1 ? 'field' : 'fields'}`);
  }

  /** The row holds a quote that does not end. */
  broken(): void {
    const saying: Saying = {
      code: 'unterminated-quote',
      reason: 'a quote is opened and never properly closed',
      remedy: 'Close the quote, or double it where it belongs to the text.',
    };
    this.#setAsideWhole(saying, 'a quote that does not end');
  }

  /** The row may have lost the delimiter before a quoted cell, so that a private text stands in a cell that is not. */
  torn(): void {
    this.#setAsideWhole(sayingOf('torn-quote'), 'a quote that ends in another cell');
  }

  /** A cell is merged with one that has its text. */
  merged(position: number): void {
    this.#put(sayingOf('merged-cells'), 'sets aside', null, position, '');
    this.keepText();
  }

  /** The row holds bytes that are no letters of its file's encoding. */
  undecodable(encoding: Encoding): void {
    const { cells, starts, ends, count } = this.#scanner;
    let position = 0;
    while (position < count - 1 && isUtf8(cells.subarray(starts[position], ends[position]))) position++;
    const saying: Saying = {
      code: `not-${encodingName(encoding)}`,
      reason: `the cell holds bytes that are no ${encodingName(encoding)}`,
      remedy: `Write the cell again in ${encodingName(encoding)}.`,
    };
    this.#put(saying, 'sets aside', null, position, this.seen(position));
    this.keepText();
  }

  /** A cell's text as a ledger may show it. */
  seen(position: number): string {
    return this.#withheld.includes(position) ? 'withheld' : this.#scanner.cellText(position);
  }

  /** Keeps the row's text, private cells withheld. */
  keepText(): void {
    this.#scanner.keepRow(this.asideTexts, this.#withheld);
  }

  #setAsideWhole(saying: Saying, seen: string): void {
    this.#put(saying, 'sets aside', null, null, seen);
    // Which cell such a row's text belongs to is unknown, so that nothing of it may be shown where anything is private.
    if (this.#withheld.length > 0) this.asideTexts.addWithheld(this.#scanner.line);
    else this.#scanner.keepRow(this.asideTexts, []);
  }

  #put(saying: Saying, severity: Follows, row: number | null, position: number | null, seen: string): void {
    this.remarks.add(saying, severity, this.#scanner.line, row, position, seen);
  }
}
