import { noLetter, type Transcoder } from './encoding.js';
import { SourceError } from './text-source.js';

// The letters of the bytes 80 to 9F; five bytes have none. Source: the index windows-1252 of the WHATWG Encoding Standard,
// which gives those five as control characters, and the code page's own table, which leaves them undefined.
const upper = '€\0‚ƒ„…†‡ˆ‰Š‹Œ\0Ž\0\0‘’“”•–—˜™š›œ\0žŸ';

const utf8: readonly Uint8Array[] = Array.from({ length: 256 }, (_, byte) => {
  if (byte < 0x80 || byte > 0x9f) return Buffer.from(String.fromCharCode(byte), 'utf8');
  const letter = upper[byte - 0x80]!;
  return letter === '\0' ? Uint8Array.of(noLetter) : Buffer.from(letter, 'utf8');
});

/**
 * Reads the Western code page 1252: one byte a letter. A text whose bytes beyond ASCII all read as UTF-8 is hardly ever meant
 * so: at its end a `SourceError` refuses it.
 */
export function windows1252(): Transcoder {
  const asUtf8 = new TextDecoder('utf-8', { fatal: true });
  let readsAsUtf8 = true;
  let isAscii = true;
  const tryAsUtf8 = (bytes: Uint8Array, isMore: boolean) => {
    try {
      if (readsAsUtf8) asUtf8.decode(bytes, { stream: isMore });
    } catch {
      readsAsUtf8 = false;
    }
  };
  return {
    convert: (bytes) => {
      tryAsUtf8(bytes, true);
      const out = new Uint8Array(bytes.length * 3);
      let length = 0;
      for (const byte of bytes) {
        if (byte < 0x80) out[length++] = byte;
        else {
          isAscii = false;
          for (const part of utf8[byte]!) out[length++] = part;
        }
      }
      return out.subarray(0, length);
    },
    end: () => {
      tryAsUtf8(new Uint8Array(0), false);
      if (isAscii || !readsAsUtf8) return new Uint8Array(0);
      const remedy = 'Declare encoding: utf-8 in the crosswalk, or leave it out.';
      throw new SourceError('encoding-in-doubt', 'bytes that all read as UTF-8', 'windows-1252', remedy);
    },
  };
}
