import { noLetter, type Transcoder } from './encoding.js';

/** Reads UTF-16, low or high byte first; half a pair of surrogates, and half a unit at the end, stand for no letter. */
export function utf16(lowFirst: boolean): Transcoder {
  const low = lowFirst ? 0 : 1;
  /** The first byte of a unit cut in two; -1 for none. */
  let cut = -1;
  /** The first half of a pair of surrogates; 0 for none. */
  let half = 0;
  return {
    convert: (bytes) => {
      const out = new Uint8Array((bytes.length + 4) * 2);
      let length = 0;
      const put = (unit: number) => {
        if (half !== 0) {
          if (unit >= 0xdc00 && unit < 0xe000) {
            const point = 0x10000 + ((half - 0xd800) << 10) + (unit - 0xdc00);
            out[length++] = 0xf0 | (point >> 18);
            out[length++] = 0x80 | ((point >> 12) & 0x3f);
            out[length++] = 0x80 | ((point >> 6) & 0x3f);
            out[length++] = 0x80 | (point & 0x3f);
            half = 0;
            return;
          }
          out[length++] = noLetter;
          half = 0;
        }
        if (unit < 0x80) out[length++] = unit;
        else if (unit < 0x800) {
          out[length++] = 0xc0 | (unit >> 6);
          out[length++] = 0x80 | (unit & 0x3f);
        } else if (unit >= 0xd800 && unit < 0xdc00) half = unit;
        else if (unit >= 0xdc00 && unit < 0xe000) out[length++] = noLetter;
        else {
          out[length++] = 0xe0 | (unit >> 12);
          out[length++] = 0x80 | ((unit >> 6) & 0x3f);
          out[length++] = 0x80 | (unit & 0x3f);
        }
      };
      let at = 0;
      if (cut >= 0 && bytes.length > 0) {
        put(low === 0 ? cut | (bytes[0]! << 8) : (cut << 8) | bytes[0]!);
        cut = -1;
        at = 1;
      }
      for (; at + 1 < bytes.length; at += 2) put(bytes[at + low]! | (bytes[at + 1 - low]! << 8));
      if (at < bytes.length) cut = bytes[at]!;
      return out.subarray(0, length);
    },
    end: () => (cut >= 0 || half !== 0 ? Uint8Array.of(noLetter) : new Uint8Array(0)),
  };
}
