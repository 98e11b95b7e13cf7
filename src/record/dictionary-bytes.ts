import { Buffer, isAscii } from 'node:buffer';
import type { CodeArray, TextColumn } from './column.js';

const stretch = 1 << 16;
const mostBytes = 2 ** 31 - 1;

/**
 * The texts of a dictionary as bytes, in the form that Arrow gives them: UTF-8 laid end to end, the text of a code between the
 * offset of the code and the next. As strings, a million short texts would take four times the memory.
 */
export class DictionaryBytes {
  readonly bytes: Uint8Array;
  /** One more than there are texts; the first is 0. */
  readonly offsets: Int32Array;
  #texts: readonly string[] | null = null;

  constructor(bytes: Uint8Array, offsets: Int32Array) {
    this.bytes = bytes;
    this.offsets = offsets;
  }

  /**
   * Turns lengths of texts in bytes into their offsets, where they stand: the length of a code's text stands one place behind
   * the code. Throws where there are more bytes than Arrow's offsets can tell.
   */
  static addUp(lengths: Int32Array): Int32Array {
    let end = 0;
    for (let at = 1; at < lengths.length; at++) {
      end += lengths[at]!;
      if (end > mostBytes) throw new Error('the texts of one column are more than 2 GiB');
      lengths[at] = end;
    }
    return lengths;
  }

  /** Texts that are strings already. */
  static of(texts: readonly string[]): DictionaryBytes {
    const joined = texts.join('');
    const bytes = Buffer.from(joined, 'utf8');
    // Plain letters are as many bytes, so that they need not be counted text by text.
    const bytesOf = bytes.length === joined.length ? (text: string) => text.length : Buffer.byteLength;
    const offsets = new Int32Array(texts.length + 1);
    for (const [code, text] of texts.entries()) offsets[code + 1] = bytesOf(text);
    const held = new DictionaryBytes(bytes, DictionaryBytes.addUp(offsets));
    held.#texts = texts;
    return held;
  }

  /** How many texts there are. */
  get size(): number {
    return this.offsets.length - 1;
  }

  /** The texts as strings, made when they are first asked for. */
  get texts(): readonly string[] {
    this.#texts ??= this.#asStrings();
    return this.#texts;
  }

  /** Some of the texts, in the order of the codes given. */
  chosen(codes: Uint32Array): DictionaryBytes {
    const { bytes, offsets: from } = this;
    const offsets = new Int32Array(codes.length + 1);
    for (const [at, code] of codes.entries()) offsets[at + 1] = from[code + 1]! - from[code]!;
    DictionaryBytes.addUp(offsets);
    const chosen = new Uint8Array(offsets[codes.length]!);
    for (const [at, code] of codes.entries()) chosen.set(bytes.subarray(from[code]!, from[code + 1]!), offsets[at]!);
    return new DictionaryBytes(chosen, offsets);
  }

  #asStrings(): readonly string[] {
    const { bytes, offsets, size } = this;
    const texts = new Array<string>(size).fill('');
    const textOf = (from: number, to: number): Buffer => Buffer.from(bytes.buffer, bytes.byteOffset + from, to - from);
    for (let code = 0; code < size; ) {
      // A stretch of plain letters is made one string and cut up, which takes a fifth of the time of one at a time.
      const from = offsets[code]!;
      const first = code;
      do code++;
      while (code < size && offsets[code + 1]! - from < stretch);
      const piece = textOf(from, offsets[code]!);
      const plain = isAscii(piece) ? piece.toString('latin1') : null;
      for (let one = first; one < code; one++) {
        const [start, end] = [offsets[one]!, offsets[one + 1]!];
        texts[one] = plain === null ? textOf(start, end).toString('utf8') : plain.slice(start - from, end - from);
      }
    }
    return texts;
  }
}

/** A text column over texts that are bytes; its dictionary is made when it is first asked for. */
export function heldColumn(codes: CodeArray, texts: DictionaryBytes): TextColumn {
  return {
    kind: 'text',
    codes,
    texts,
    get dictionary() {
      return texts.texts;
    },
  };
}
