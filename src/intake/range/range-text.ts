import type { FileHandle } from 'node:fs/promises';
import { ReadAtOnce } from '../source/at-once.js';
import type { TextSource } from '../source/text-source.js';

const lineFeed = 10;
const carriageReturn = 13;

/** The text of a file in UTF-8 from a place on; its fingerprint is taken apart, since no range holds the whole. */
export class RangeText implements TextSource {
  readonly size: number;
  done = 0;
  readonly #handle: FileHandle;
  readonly #bytes: ReadAtOnce;
  #at = 0;

  constructor(handle: FileHandle, size: number) {
    this.#handle = handle;
    this.#bytes = new ReadAtOnce(handle);
    this.size = size;
  }

  async read(into: Uint8Array): Promise<number> {
    const bytesRead = await this.#bytes.read(into, this.#at);
    this.#at += bytesRead;
    this.done += bytesRead;
    return bytesRead;
  }

  async seek(offset: number): Promise<void> {
    this.#at = offset;
  }

  async fingerprint(): Promise<string> {
    throw new Error('a range has no fingerprint');
  }

  async close(): Promise<void> {
    await this.#handle.close();
  }
}

/** The first place at or behind an offset where a line begins, whatever quotes stand before it; the size where none does. */
export async function lineStart(handle: FileHandle, offset: number, size: number): Promise<number> {
  const bytes = new Uint8Array(1 << 12);
  let last = 0;
  for (let at = Math.max(0, offset - 1); at < size; ) {
    const { bytesRead } = await handle.read(bytes, 0, bytes.length, at);
    if (bytesRead === 0) return size;
    for (let index = 0; index < bytesRead; index++) {
      // A line feed behind a carriage return belongs to it, so that only the byte behind tells where a line begins.
      const isBegun =
        at + index >= offset && (last === lineFeed || (last === carriageReturn && bytes[index] !== lineFeed));
      if (isBegun) return at + index;
      last = bytes[index]!;
    }
    at += bytesRead;
  }
  return size;
}
