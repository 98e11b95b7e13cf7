/** The encodings that a crosswalk may declare. `utf-16` says by its first two bytes which of both it is. */
export const encodings = ['utf-8', 'utf-16', 'utf-16le', 'utf-16be', 'windows-1252'] as const;

/** How letters are written as bytes. */
export type Encoding = (typeof encodings)[number];

/** An encoding's name in problems, which tells nothing of the order of bytes. */
export function encodingName(encoding: Encoding): string {
  return encoding.startsWith('utf-16') ? 'utf-16' : encoding;
}

/** Turns a file's bytes into UTF-8, chunk by chunk. What stands for no letter becomes the byte FF, which UTF-8 never holds. */
export interface Transcoder {
  /** The UTF-8 of those bytes; a letter cut by the end of the chunk waits for the next one. */
  readonly convert: (bytes: Uint8Array) => Uint8Array;
  /** What still waited at the end of the file. */
  readonly end: () => Uint8Array;
}

/** The byte that stands for what could not be read as a letter. */
export const noLetter = 0xff;
