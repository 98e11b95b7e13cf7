import { BytePool } from './byte-pool.js';

const slotCount = 1 << 14;
/** More different endings than this are not repeated ones. */
const mostEndings = slotCount / 2;
/** What is longer than this, in bytes, is unlikely to be met again. */
const longest = 1 << 10;

/**
 * Numbers what stands in rows behind their first cells, the line end included, counted from 1: most rows of a list of looks
 * end in one of a few hundred ways, and an ending that is known need not be cut into cells.
 */
export class RowEndings {
  /** How many cells stand before an ending. */
  readonly cellsBefore: number;
  /** One more than the greatest number given out. */
  size = 1;
  /** Where the line feed stands behind the place asked about last. */
  end = 0;
  readonly #texts = new BytePool();
  #pool = viewOf(this.#texts.bytes);
  readonly #starts = new Uint32Array(mostEndings);
  readonly #lengths = new Uint32Array(mostEndings);
  readonly #hashes = new Int32Array(mostEndings);
  readonly #slots = new Uint16Array(slotCount);
  /** The bytes last asked about, and a view of them. */
  #asked = this.#texts.bytes;
  #view = this.#pool;
  #hash = 0;

  constructor(cellsBefore: number) {
    this.cellsBefore = cellsBefore;
  }

  /**
   * The number of the ending that begins at `start`; 0 where it is not known, or does not end before `limit`. Behind the
   * limit stand a line feed and three bytes more.
   */
  find(bytes: Uint8Array, start: number, limit: number): number {
    if (bytes !== this.#asked) {
      this.#asked = bytes;
      this.#view = viewOf(bytes);
    }
    const view = this.#view;
    let hash = 0;
    let at = start;
    let four = view.getInt32(at, true);
    let feeds = lineFeedsIn(four);
    while (feeds === 0) {
      hash = mixed(hash, four);
      at += 4;
      four = view.getInt32(at, true);
      feeds = lineFeedsIn(four);
    }
    const bytesBefore = (31 - Math.clz32(feeds & -feeds)) >>> 3;
    const end = at + bytesBefore;
    this.end = end;
    if (end >= limit) return 0;
    hash = mixed(hash, bytesBefore === 0 ? 0 : four & (-1 >>> (32 - 8 * bytesBefore)));
    const slots = this.#slots;
    for (let slot = hash & (slotCount - 1); ; slot = (slot + 1) & (slotCount - 1)) {
      const ending = slots[slot]!;
      if (ending === 0) {
        this.#hash = hash;
        return 0;
      }
      if (this.#hashes[ending] === hash && this.#holds(ending, start, end)) return ending;
    }
  }

  /** Whether the bytes last asked about are alike from two places on. */
  alike(one: number, other: number, length: number): boolean {
    const view = this.#view;
    let at = 0;
    for (; at + 4 <= length; at += 4) if (view.getInt32(one + at) !== view.getInt32(other + at)) return false;
    for (; at < length; at++) if (view.getUint8(one + at) !== view.getUint8(other + at)) return false;
    return true;
  }

  /** The number of the ending from `start` to a line feed at `end`, given out where it is not known; 0 where it gets none. */
  learn(bytes: Uint8Array, start: number, end: number): number {
    const known = this.find(bytes, start, end + 1);
    const { size } = this;
    if (known !== 0 || this.end !== end || size === mostEndings || end - start > longest) return known;
    this.#starts[size] = this.#texts.size;
    this.#lengths[size] = end - start;
    this.#hashes[size] = this.#hash;
    this.#texts.add(bytes, start, end);
    this.#pool = viewOf(this.#texts.bytes);
    let slot = this.#hash & (slotCount - 1);
    while (this.#slots[slot] !== 0) slot = (slot + 1) & (slotCount - 1);
    this.#slots[slot] = size;
    this.size++;
    return size;
  }

  /** The bytes of an ending, its line feed left off. */
  textBytes(ending: number): Uint8Array {
    const start = this.#starts[ending]!;
    return this.#texts.bytes.subarray(start, start + this.#lengths[ending]!);
  }

  #holds(ending: number, start: number, end: number): boolean {
    if (this.#lengths[ending] !== end - start) return false;
    const pool = this.#pool;
    const view = this.#view;
    let own = this.#starts[ending]!;
    let at = start;
    for (; at + 4 <= end; at += 4, own += 4) if (pool.getInt32(own) !== view.getInt32(at)) return false;
    for (; at < end; at++, own++) if (pool.getUint8(own) !== view.getUint8(at)) return false;
    return true;
  }
}

/** Not zero where one of four bytes is a line feed; the lowest bit set is the highest bit of the first that is. */
function lineFeedsIn(four: number): number {
  const rest = four ^ 0x0a0a0a0a;
  return (rest - 0x01010101) & ~rest & 0x80808080;
}

function mixed(hash: number, four: number): number {
  const product = Math.imul(hash ^ four, 0x9e3779b1);
  return product ^ (product >>> 15);
}

function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
}
