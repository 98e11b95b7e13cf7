import type { TextSource } from './text-source.js';

/** A text that was made in memory. */
export function madeText(bytes: Uint8Array, fingerprint: () => Promise<string>): TextSource {
  let at = 0;
  return {
    size: bytes.length,
    get done() {
      return at;
    },
    read: async (into) => {
      const length = Math.min(into.length, bytes.length - at);
      into.set(bytes.subarray(at, at + length));
      at += length;
      return length;
    },
    seek: async (offset) => {
      at = offset;
    },
    fingerprint,
    close: async () => {},
  };
}
