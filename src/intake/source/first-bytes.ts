import type { Encoding, Transcoder } from './encoding.js';
import { SourceError } from './text-source.js';
import { utf16 } from './utf-16.js';
import { windows1252 } from './windows-1252.js';

/** How many of a file's first bytes tell what it is. */
export const firstBytes = 256;

function beginsWith(bytes: Uint8Array, mark: readonly number[]): boolean {
  return mark.every((byte, at) => bytes[at] === byte);
}

function doubt(seen: string, wanted: string, remedy: string): SourceError {
  return new SourceError('encoding-in-doubt', seen, wanted, remedy);
}

/** The encoding that a byte order mark names; null without one. */
function markOf(bytes: Uint8Array): Encoding | null {
  if (beginsWith(bytes, [0xef, 0xbb, 0xbf])) return 'utf-8';
  if (beginsWith(bytes, [0xff, 0xfe])) return 'utf-16le';
  return beginsWith(bytes, [0xfe, 0xff]) ? 'utf-16be' : null;
}

/**
 * The transcoder for a file that is declared to be in an encoding, null for UTF-8, which needs none. Throws a `SourceError`
 * where the first bytes speak against the declaration: what is in doubt is refused, never guessed.
 */
export function transcoderFor(encoding: Encoding, bytes: Uint8Array): Transcoder | null {
  if (beginsWith(bytes, [0x50, 0x4b, 0x03, 0x04])) {
    const remedy = 'Name it .zip or .xlsx, or export it again as text.';
    throw new SourceError('not-text', 'an archive', 'delimited text', remedy);
  }
  if (beginsWith(bytes, [0xd0, 0xcf, 0x11, 0xe0])) {
    const remedy = 'Save it as .xlsx, or export it as delimited text.';
    throw new SourceError('not-text', 'a workbook of the old binary form', 'delimited text or .xlsx', remedy);
  }
  const mark = markOf(bytes);
  if (encoding === 'utf-16') {
    if (mark === 'utf-16le' || mark === 'utf-16be') return utf16(mark === 'utf-16le');
    throw doubt('no byte order mark', 'utf-16 with its mark', 'Declare encoding: utf-16le or utf-16be, or utf-8.');
  }
  if (mark !== null && mark !== encoding) {
    throw doubt(`the byte order mark of ${mark}`, encoding, `Declare encoding: ${mark} in the crosswalk's dialect.`);
  }
  if (encoding === 'utf-16le' || encoding === 'utf-16be') return utf16(encoding === 'utf-16le');
  if (bytes.includes(0)) {
    const remedy = 'If it is text, declare encoding: utf-16le or utf-16be; if not, take it out of the crosswalk.';
    throw doubt('zero bytes, as UTF-16 has', encoding, remedy);
  }
  return encoding === 'windows-1252' ? windows1252() : null;
}
