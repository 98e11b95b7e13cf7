import { DictionaryBytes } from '../record/dictionary-bytes.js';
import { putBytes } from './byte-pool.js';
import { grown } from './growing.js';
import { letGo } from './let-go.js';
import { hashOf, headOf, mixedOf } from './text-hash.js';

const firstBytes = 4096;
const recentCount = 256;
const recentShift = 24;
const firstSlots = 64;

/** Numbered texts: those of code 1 come first, and each ends where `ends` says for its code. */
export interface PackedTexts {
  /** One more than the greatest code. */
  readonly size: number;
  readonly bytes: Uint8Array;
  readonly ends: Uint32Array;
}

/**
 * Numbers texts by their bytes: the same bytes always get the same code, counted from 1 in order of first appearance.
 * Code 0 stays free for missing. No string is made until a text is asked for.
 */
export class Interner {
  /** One more than the greatest code given out. */
  size = 1;
  #bytes: Uint8Array = new Uint8Array(firstBytes);
  /** The same bytes, for reading four at once. */
  #pool = viewOf(this.#bytes);
  /** Where each code's bytes end; they begin where those of the code before it end. */
  #ends: Uint32Array = new Uint32Array(firstSlots);
  #hashes: Int32Array = new Int32Array(firstSlots);
  #slots: Int32Array = new Int32Array(firstSlots * 2);
  #last = 0;
  #isSettled = false;
  /** Texts found lately, eight numbers each: head, tail, length, middle and code. */
  readonly #recent = new Int32Array(recentCount * 8);
  /** The hash of the text that was looked up last in vain. */
  #hash = 0;
  /** The bytes last asked about, and a view of them; and those before, since cells lie in two places by turns. */
  #asked = this.#bytes;
  #view = this.#pool;
  #askedBefore = this.#bytes;
  #viewBefore = this.#pool;

  /** The code of those bytes, a new one when they were never seen: `code === size` as it was before the call. */
  codeOf(bytes: Uint8Array, start: number, end: number): number {
    const known = this.find(bytes, start, end);
    return known === 0 ? this.#add(bytes, start, end) : known;
  }

  /** The code of those bytes, 0 when they were never seen. */
  find(bytes: Uint8Array, start: number, end: number): number {
    if (bytes !== this.#asked) this.#turnTo(bytes);
    const view = this.#view;
    const length = end - start;
    // The first four bytes and the last four, which may overlap, are all of a text of up to eight; with four between, of twelve.
    const head = headOf(view, start, length);
    const middle = length > 8 ? view.getInt32(start + 4) : 0;
    const tail = length < 4 ? 0 : view.getInt32(end - 4);
    const mixed = mixedOf(head, tail, length);
    const recent = this.#recent;
    const place = (mixed >>> recentShift) << 3;
    // Most cells hold a text met a moment ago.
    if (
      recent[place] === head &&
      recent[place + 1] === tail &&
      recent[place + 2] === length &&
      recent[place + 3] === middle
    ) {
      const code = recent[place + 4]!;
      if (code !== 0 && (length <= 12 || this.#holds(code, start, end))) {
        this.#last = code;
        return code;
      }
    }
    const code = this.#lookUp(start, end, head, tail);
    if (code === 0) return 0;
    recent[place] = head;
    recent[place + 1] = tail;
    recent[place + 2] = length;
    recent[place + 3] = middle;
    recent[place + 4] = code;
    this.#last = code;
    return code;
  }

  #turnTo(bytes: Uint8Array): void {
    const view = bytes === this.#askedBefore ? this.#viewBefore : viewOf(bytes);
    this.#askedBefore = this.#asked;
    this.#viewBefore = this.#view;
    this.#asked = bytes;
    this.#view = view;
  }

  #lookUp(start: number, end: number, head: number, tail: number): number {
    // Keys follow each other in the order in which their own table lists them.
    const next = this.#last + 1;
    if (next > 1 && next < this.size && this.#holds(next, start, end)) return next;
    const hash = hashOf(this.#view, start, end, head, tail);
    const slots = this.#slots;
    const mask = slots.length - 1;
    for (let slot = hash & mask; ; slot = (slot + 1) & mask) {
      const code = slots[slot]!;
      if (code === 0) {
        this.#hash = hash;
        return 0;
      }
      if (this.#hashes[code] === hash && this.#holds(code, start, end)) return code;
    }
  }

  /** The code of a text that another numbering gave a code, given out when new. */
  codeFrom(other: Interner, code: number): number {
    return this.codeOf(other.#bytes, other.#ends[code - 1]!, other.#ends[code]!);
  }

  /** The code of a text, given out when new. */
  codeOfText(text: string): number {
    const bytes = Buffer.from(text, 'utf8');
    return this.codeOf(bytes, 0, bytes.length);
  }

  /** The text of a code that was given out. */
  textOf(code: number): string {
    if (code >= this.#ends.length) throw new Error('a text is asked for that was given up, or never numbered');
    const { buffer, byteOffset } = this.#bytes;
    const start = this.#ends[code - 1]!;
    return Buffer.from(buffer, byteOffset + start, this.#ends[code]! - start).toString();
  }

  /**
   * The texts in an order of their own, the empty one at 0: that of each code at its place, none where the place is 0; all
   * places below `count` are taken. They are given up here: nothing more can be asked.
   */
  takeTexts(placeOf: Uint32Array, count: number): DictionaryBytes {
    const ends = this.#ends;
    const offsets = new Int32Array(count + 1);
    for (let code = 1; code < this.size; code++) {
      const place = placeOf[code]!;
      if (place !== 0) offsets[place + 1] = ends[code]! - ends[code - 1]!;
    }
    DictionaryBytes.addUp(offsets);
    const bytes = new Uint8Array(offsets[count]!);
    for (let code = 1; code < this.size; ) {
      const place = placeOf[code]!;
      const first = code++;
      if (place === 0) continue;
      // Texts that follow each other in both orders are moved as one.
      while (code < this.size && placeOf[code] === place + code - first) code++;
      putBytes(this.#bytes, ends[first - 1]!, ends[code - 1]!, bytes, offsets[place]!);
    }
    letGo(this.#bytes);
    letGo(this.#ends);
    this.#bytes = new Uint8Array(0);
    this.#pool = viewOf(this.#bytes);
    this.#ends = new Uint32Array(1);
    this.settle();
    return new DictionaryBytes(bytes, offsets);
  }

  /** By the code of each text of another numbering: its code here, given out when new. */
  codesOf({ size, bytes, ends }: PackedTexts): Uint32Array {
    const codes = new Uint32Array(size);
    for (let code = 1; code < size; code++) codes[code] = this.codeOf(bytes, ends[code - 1]!, ends[code]!);
    return codes;
  }

  /** Gives up what finds a text's number: from here on the texts can only be asked for. */
  settle(): void {
    letGo(this.#slots);
    letGo(this.#hashes);
    this.#slots = new Int32Array(1);
    this.#hashes = new Int32Array(0);
    this.#recent.fill(0);
    this.#asked = this.#askedBefore = this.#bytes;
    this.#view = this.#viewBefore = this.#pool;
    this.#isSettled = true;
  }

  /** The texts in the order of their codes, the empty one at 0; given up here. */
  takeAll(): DictionaryBytes {
    return this.takeTexts(
      Uint32Array.from({ length: this.size }, (_, code) => code),
      this.size,
    );
  }

  /** The numbered texts as they may be handed from one thread to another. */
  pack(): PackedTexts {
    return { size: this.size, bytes: this.#bytes, ends: this.#ends };
  }

  #holds(code: number, start: number, end: number): boolean {
    const own = this.#ends[code - 1]!;
    const length = end - start;
    if (this.#ends[code]! - own !== length) return false;
    const pool = this.#pool;
    const view = this.#view;
    if (length >= 4) {
      // The last four bytes may overlap those before, so that no shorter rest is left.
      const rest = length - 4;
      for (let at = 0; at < rest; at += 4) if (pool.getInt32(own + at) !== view.getInt32(start + at)) return false;
      return pool.getInt32(own + rest) === view.getInt32(start + rest);
    }
    for (let at = 0; at < length; at++) if (pool.getUint8(own + at) !== view.getUint8(start + at)) return false;
    return true;
  }

  #add(bytes: Uint8Array, start: number, end: number): number {
    if (this.#isSettled) throw new Error('a text is numbered after all were');
    const code = this.size;
    if (code === this.#ends.length) {
      this.#ends = grown(this.#ends, code * 2);
      this.#hashes = grown(this.#hashes, code * 2);
    }
    const from = this.#ends[code - 1]!;
    const to = from + end - start;
    if (to > this.#bytes.length) {
      this.#bytes = grown(this.#bytes, Math.max(to, from * 2));
      this.#pool = viewOf(this.#bytes);
    }
    for (let at = start; at < end; at++) this.#bytes[from + at - start] = bytes[at]!;
    const hash = this.#hash;
    this.#ends[code] = to;
    this.#hashes[code] = hash;
    this.#last = code;
    this.size++;
    if (this.size * 2 > this.#slots.length) this.#slots = new Int32Array(this.#slots.length * 2);
    else {
      put(this.#slots, code, hash);
      return code;
    }
    for (let known = 1; known < this.size; known++) put(this.#slots, known, this.#hashes[known]!);
    return code;
  }
}

function put(slots: Int32Array, code: number, hash: number): void {
  const mask = slots.length - 1;
  let slot = hash & mask;
  while (slots[slot] !== 0) slot = (slot + 1) & mask;
  slots[slot] = code;
}

function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
}
