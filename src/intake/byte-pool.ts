import { grown } from './growing.js';

/** Bytes laid end to end, each piece known by where it begins and ends; no string is made until one is asked for. */
export class BytePool {
  /** How many bytes are held. */
  size = 0;
  bytes: Uint8Array = new Uint8Array(256);

  /** Appends a piece of other bytes. */
  add(bytes: Uint8Array, start: number, end: number): void {
    const to = this.size + end - start;
    if (to > this.bytes.length) this.bytes = grown(this.bytes, Math.max(to, this.bytes.length * 2));
    if (end - start > 64) this.bytes.set(bytes.subarray(start, end), this.size);
    else for (let at = start; at < end; at++) this.bytes[this.size + at - start] = bytes[at]!;
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
