import type { Transcoder } from './encoding.js';
import type { TextSource } from './text-source.js';

/** Raw bytes, chunk by chunk, with what is needed to end them and to tell which file they came from. */
export interface RawBytes {
  readonly size: number;
  readonly chunks: AsyncIterator<Uint8Array>;
  readonly fingerprint: () => Promise<string>;
  readonly close: () => Promise<void>;
}

/** A text that is turned into UTF-8 while it is read; going forward means reading on and letting bytes pass. */
export class StreamedText implements TextSource {
  readonly size: number;
  done = 0;
  readonly #raw: RawBytes;
  readonly #transcoder: Transcoder | null;
  #waiting = new Uint8Array(0);
  #offset = 0;
  #ended = false;

  constructor(raw: RawBytes, first: Uint8Array, transcoder: Transcoder | null) {
    this.#raw = raw;
    this.#transcoder = transcoder;
    this.size = raw.size;
    this.#take(first);
  }

  async read(into: Uint8Array): Promise<number> {
    while (this.#waiting.length === 0 && !this.#ended) await this.#more();
    const length = Math.min(into.length, this.#waiting.length);
    into.set(this.#waiting.subarray(0, length));
    this.#pass(length);
    return length;
  }

  async seek(offset: number): Promise<void> {
    while (this.#offset < offset) {
      if (this.#waiting.length === 0) {
        if (this.#ended) return;
        await this.#more();
      }
      this.#pass(Math.min(this.#waiting.length, offset - this.#offset));
    }
  }

  fingerprint(): Promise<string> {
    return this.#raw.fingerprint();
  }

  close(): Promise<void> {
    return this.#raw.close();
  }

  #pass(length: number): void {
    this.#waiting = this.#waiting.subarray(length);
    this.#offset += length;
  }

  #take(bytes: Uint8Array): void {
    this.done += bytes.length;
    this.#waiting = Uint8Array.from(this.#transcoder === null ? bytes : this.#transcoder.convert(bytes));
  }

  async #more(): Promise<void> {
    const next = await this.#raw.chunks.next();
    if (next.done !== true) {
      this.#take(next.value);
      return;
    }
    this.#ended = true;
    if (this.#transcoder !== null) this.#waiting = Uint8Array.from(this.#transcoder.end());
  }
}
