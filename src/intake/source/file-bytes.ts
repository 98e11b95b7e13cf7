import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { type FileHandle, open } from 'node:fs/promises';
import type { RawBytes } from './streamed-text.js';

/** The first bytes of an open file, at most that many. */
export async function firstOf(handle: FileHandle, count: number): Promise<Uint8Array> {
  const bytes = new Uint8Array(count);
  const { bytesRead } = await handle.read(bytes, 0, count, 0);
  return bytes.subarray(0, bytesRead);
}

/** The SHA-256 of a file on disk, in hexadecimal. */
export async function fileFingerprint(path: string): Promise<string> {
  const hash = createHash('sha256');
  for await (const chunk of createReadStream(path)) hash.update(chunk as Uint8Array);
  return hash.digest('hex');
}

/** The bytes of a file on disk from a place on, chunk by chunk. */
export function fileBytes(handle: FileHandle, path: string, size: number, chunk: number, from: number): RawBytes {
  async function* chunks(): AsyncGenerator<Uint8Array> {
    let at = from;
    for (;;) {
      const bytes = new Uint8Array(chunk);
      const { bytesRead } = await handle.read(bytes, 0, chunk, at);
      if (bytesRead === 0) return;
      at += bytesRead;
      yield bytes.subarray(0, bytesRead);
    }
  }
  return { size, chunks: chunks(), fingerprint: () => fileFingerprint(path), close: () => handle.close() };
}

/** An open file with its size. */
export async function openFile(path: string): Promise<{ readonly handle: FileHandle; readonly size: number }> {
  const handle = await open(path, 'r');
  const { size } = await handle.stat();
  return { handle, size };
}
