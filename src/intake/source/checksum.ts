const table = Int32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  return value;
});

/** The CRC-32 that a ZIP archive keeps of each file in it, carried on from an earlier part (0 at the start); ISO 3309. */
export function checksum(bytes: Uint8Array, earlier = 0): number {
  let value = ~earlier;
  for (const byte of bytes) value = (value >>> 8) ^ table[(value ^ byte) & 0xff]!;
  return ~value >>> 0;
}
