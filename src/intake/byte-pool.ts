import { grown } from './growing.js';

/** Bytes laid end to end, each piece known by where it begins and ends; no string is made until one is asked for. */
export class BytePool {
  /** How many bytes are held. */
  size = 0;
  bytes: Uint8Array = new Uint8Array(256);

  /** Makes room for so many bytes more, so that what is there need not be moved while they come. */
  expect(bytes: number): void {
    if (this.size + bytes > this.bytes.length) this.bytes = grown(this.bytes, this.size + bytes);
  }

  /** Appends a piece of other bytes. */
  add(bytes: Uint8Array, start: number, end: number): void {
    const to = this.size + end - start;
    if (to > this.bytes.length) this.bytes = grown(this.bytes, Math.max(to, this.bytes.length * 2));
    putBytes(bytes, start, end, this.bytes, this.size);
    this.size = to;
  }

  /** Appends a text. */
  addText(text: string): void {
    const bytes = Buffer.from(text, 'utf8');
    this.add(bytes, 0, bytes.length);
  }

  /** The text between two places, read as UTF-8. */
  textOf(start: number, end: number): string {
    return Buffer.from(this.bytes.buffer, this.bytes.byteOffset + start, end - start).toString('utf8');
  }
}

/** Puts a piece of some bytes at a place among others. */
export function putBytes(bytes: Uint8Array, start: number, end: number, to: Uint8Array, at: number): void {
  if (end - start > 64) to.set(bytes.subarray(start, end), at);
  else for (let from = start; from < end; from++) to[at + from - start] = bytes[from]!;
}
