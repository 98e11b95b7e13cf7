import { deflateRawSync } from 'node:zlib';

/** Bytes as DEFLATE in base64, as a page carries them for its script to unpack. */
export function deflated(bytes: Uint8Array): string {
  return deflateRawSync(bytes, { level: 9 }).toString('base64');
}
