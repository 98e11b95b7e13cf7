import { deflateRawSync } from 'node:zlib';

/** Bytes as DEFLATE in base64, as pages carry what their script unpacks. */
export function deflated(bytes: Uint8Array): string {
  return deflateRawSync(bytes, { level: 6 }).toString('base64');
}
