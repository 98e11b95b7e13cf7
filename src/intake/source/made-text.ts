import type { MergedCells } from './sheet-rows.js';
import type { TextSource } from './text-source.js';

/** A text that was made in memory, from a sheet with those merged cells. */
export function madeText(
  bytes: Uint8Array,
  merged: readonly MergedCells[],
  fingerprint: () => Promise<string>,
): TextSource {
  let at = 0;
  return {
    size: bytes.length,
    merged,
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
