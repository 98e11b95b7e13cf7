import { readSync } from 'node:fs';
import type { FileHandle } from 'node:fs/promises';
import { setImmediate } from 'node:timers/promises';

/** After so many bytes, whatever else waits has its turn: answers of other threads, files being opened. */
const turn = 1 << 20;

/**
 * Reads a file from place to place without waiting for another thread to fetch its bytes: they are mostly at hand, and the
 * wait takes longer than the copy.
 */
export class ReadAtOnce {
  readonly #handle: FileHandle;
  #sinceTurn = 0;

  constructor(handle: FileHandle) {
    this.#handle = handle;
  }

  /** Puts bytes of the file from a place on, as many as there is room for, and says how many. */
  async read(into: Uint8Array, at: number): Promise<number> {
    if (this.#sinceTurn >= turn) {
      this.#sinceTurn = 0;
      await setImmediate();
    }
    const count = readSync(this.#handle.fd, into, 0, into.length, at);
    this.#sinceTurn += count;
    return count;
  }
}
