import type { NotebookDocument } from '../../notebook/document.js';
import type { EvaluatedFigure, EvaluatedSelection, EvaluatedSheet } from '../../notebook/evaluated.js';
import type { Book } from '../../record/book.js';
import { type CarriedBook, unpackBook } from './carried-book.js';

/** What a page carries besides the rows, so that its script can compute the notebook again. */
export interface CarriedHead {
  readonly document: NotebookDocument;
  /** SHA-256 of the document, in hexadecimal. */
  readonly fingerprint: string;
  /** The fields that a reader may choose by. */
  readonly filters: readonly string[];
  /** The names that each name is made of. */
  readonly needs: readonly (readonly [name: string, needs: readonly string[]])[];
  /** What cannot be computed from the rows carried, since it tells craft or people apart: as it is over all records. */
  readonly whole: {
    readonly selections: readonly EvaluatedSelection[];
    readonly figures: readonly EvaluatedFigure[];
    readonly sheets: readonly EvaluatedSheet[];
  };
  readonly book: CarriedBook;
}

/** A notebook and the records it asks, as a page carries them. */
export interface CarriedSeason {
  readonly head: CarriedHead;
  readonly book: Book;
}

const lengthBytes = 4;

/** The bytes that hold a head and packed rows: the length of the head as UTF-8 JSON (32 bits, low byte first), the head, the rows. */
export function joinSeason(head: CarriedHead, rows: Uint8Array): Uint8Array {
  const text = new TextEncoder().encode(JSON.stringify(head));
  const whole = new Uint8Array(lengthBytes + text.length + rows.length);
  new DataView(whole.buffer).setUint32(0, text.length, true);
  whole.set(text, lengthBytes);
  whole.set(rows, lengthBytes + text.length);
  return whole;
}

/** The season that such bytes hold. */
export function readSeason(whole: Uint8Array): CarriedSeason {
  const length = new DataView(whole.buffer, whole.byteOffset).getUint32(0, true);
  const text = new TextDecoder().decode(whole.subarray(lengthBytes, lengthBytes + length));
  // Written by `joinSeason` of the same program when the page was made.
  const head = JSON.parse(text) as CarriedHead;
  return { head, book: unpackBook(head.book, whole.subarray(lengthBytes + length)) };
}
