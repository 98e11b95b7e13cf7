/** Bytes of UTF-8, where they lie. */
export interface HeldText {
  readonly bytes: Uint8Array;
  readonly start: number;
  readonly end: number;
}

/** The text that lies somewhere as bytes; what is no UTF-8 in them is shown by U+FFFD. */
export function textHeld({ bytes, start, end }: HeldText): string {
  return Buffer.from(bytes.buffer, bytes.byteOffset + start, end - start).toString('utf8');
}
