import { createHash, type Hash } from 'node:crypto';
import type { FileHandle } from 'node:fs/promises';
import { ReadAtOnce } from './at-once.js';
import type { TextSource } from './text-source.js';

/** The text of a file that is in UTF-8 already: read straight into the reader's bytes, and fingerprinted on the way. */
export class PlainFile implements TextSource {
  readonly size: number;
  done = 0;
  readonly #handle: FileHandle;
  readonly #bytes: ReadAtOnce;
  /** Taken over what is read from the beginning on; null once the reading went from place to place. */
  #hash: Hash | null = createHash('sha256');
  readonly #chunk: number;
  #at = 0;

  constructor(handle: FileHandle, size: number, chunk: number) {
    this.#handle = handle;
    this.#bytes = new ReadAtOnce(handle);
    this.size = size;
    this.#chunk = chunk;
  }

  async read(into: Uint8Array): Promise<number> {
    const bytesRead = await this.#bytes.read(into.subarray(0, this.#chunk), this.#at);
    this.#hash?.update(into.subarray(0, bytesRead));
    this.#at += bytesRead;
    this.done += bytesRead;
    return bytesRead;
  }

  async seek(offset: number): Promise<void> {
    if (offset !== this.#at) this.#hash = null;
    this.#at = offset;
  }

  async fingerprint(): Promise<string> {
    if (this.#hash === null) throw new Error('a file read from place to place has no fingerprint');
    return this.#hash.digest('hex');
  }

  /** What tells whether the file was written to since: its size, and when it was last changed. */
  async stamp(): Promise<string> {
    const { size, mtimeNs, ctimeNs } = await this.#handle.stat({ bigint: true });
    return [size, mtimeNs, ctimeNs].join(' ');
  }

  async close(): Promise<void> {
    await this.#handle.close();
  }
}
