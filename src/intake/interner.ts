const firstBytes = 4096;
const firstSlots = 64;

/**
 * Numbers texts by their bytes: the same bytes always get the same code, counted from 1 in order of first appearance.
 * Code 0 stays free for missing. No string is made until a text is asked for.
 */
export class Interner {
  /** One more than the greatest code given out. */
  size = 1;
  #bytes = new Uint8Array(firstBytes);
  /** Where each code's bytes end; they begin where those of the code before it end. */
  #ends = new Uint32Array(firstSlots);
  #hashes = new Int32Array(firstSlots);
  #slots = new Int32Array(firstSlots * 2);
  #last = 0;

  /** The code of those bytes, a new one when they were never seen: `code === size` as it was before the call. */
  codeOf(bytes: Uint8Array, start: number, end: number): number {
    if (this.#last !== 0 && this.#holds(this.#last, bytes, start, end)) return this.#last;
    const hash = hashOf(bytes, start, end);
    const mask = this.#slots.length - 1;
    let slot = (hash ^ (hash >>> 15)) & mask;
    for (;;) {
      const code = this.#slots[slot]!;
      if (code === 0) break;
      if (this.#hashes[code] === hash && this.#holds(code, bytes, start, end)) {
        this.#last = code;
        return code;
      }
      slot = (slot + 1) & mask;
    }
    const code = this.#add(bytes, start, end, hash);
    this.#slots[slot] = code;
    this.#last = code;
    if (this.size * 2 > this.#slots.length) this.#widen();
    return code;
  }

  /** The code of a text, given out when new. */
  codeOfText(text: string): number {
    const bytes = Buffer.from(text, 'utf8');
    return this.codeOf(bytes, 0, bytes.length);
  }

  /** The text of a code that was given out. */
  textOf(code: number): string {
    return Buffer.from(this.#bytes.buffer, this.#ends[code - 1]!, this.#ends[code]! - this.#ends[code - 1]!).toString();
  }

  #holds(code: number, bytes: Uint8Array, start: number, end: number): boolean {
    const own = this.#ends[code - 1]!;
    const length = end - start;
    if (this.#ends[code]! - own !== length) return false;
    const pool = this.#bytes;
    for (let at = length - 1; at >= 0; at--) if (pool[own + at] !== bytes[start + at]) return false;
    return true;
  }

  #add(bytes: Uint8Array, start: number, end: number, hash: number): number {
    const code = this.size;
    if (code === this.#ends.length) {
      this.#ends = widened(this.#ends, new Uint32Array(code * 2));
      this.#hashes = widened(this.#hashes, new Int32Array(code * 2));
    }
    const from = this.#ends[code - 1]!;
    const to = from + end - start;
    if (to > this.#bytes.length) this.#bytes = widened(this.#bytes, new Uint8Array(Math.max(to, from * 2)));
    for (let at = start; at < end; at++) this.#bytes[from + at - start] = bytes[at]!;
    this.#ends[code] = to;
    this.#hashes[code] = hash;
    this.size++;
    return code;
  }

  #widen(): void {
    const slots = new Int32Array(this.#slots.length * 2);
    const mask = slots.length - 1;
    for (let code = 1; code < this.size; code++) {
      const hash = this.#hashes[code]!;
      let slot = (hash ^ (hash >>> 15)) & mask;
      while (slots[slot] !== 0) slot = (slot + 1) & mask;
      slots[slot] = code;
    }
    this.#slots = slots;
  }
}

/** A 32-bit hash in the manner of FNV-1a, four bytes a step, and mixed downwards so that its low bits may be used. */
function hashOf(bytes: Uint8Array, start: number, end: number): number {
  let hash = 0x811c9dc5 ^ (end - start);
  let at = start;
  for (; at + 4 <= end; at += 4) {
    const four = bytes[at]! | (bytes[at + 1]! << 8) | (bytes[at + 2]! << 16) | (bytes[at + 3]! << 24);
    hash = Math.imul(hash ^ four, 0x01000193);
    hash ^= hash >>> 15;
  }
  for (; at < end; at++) hash = Math.imul(hash ^ bytes[at]!, 0x01000193);
  return Math.imul(hash ^ (hash >>> 13), 0x5bd1e995);
}

function widened<A extends Uint8Array | Uint32Array | Int32Array>(old: A, wide: A): A {
  wide.set(old);
  return wide;
}
