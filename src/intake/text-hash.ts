const lastBits = 15;

/** The first four bytes of a text as one number; those of a shorter one as fewer. */
export function headOf(view: DataView, start: number, length: number): number {
  if (length >= 4) return view.getInt32(start);
  if (length === 0) return 0;
  if (length === 1) return view.getUint8(start);
  return length === 2 ? view.getUint16(start) : (view.getUint16(start) << 8) | view.getUint8(start + 2);
}

/**
 * A 32-bit hash in the manner of FNV-1a, four bytes a step. Texts that differ in the low bits of their last byte alone, as keys
 * that are counted on do, have hashes side by side, so that they are looked for in memory that is at hand already.
 */
export function hashOf(view: DataView, start: number, end: number, head: number, tail: number): number {
  const length = end - start;
  if (length === 0) return 0;
  const last = view.getUint8(end - 1) & lastBits;
  let hash = mixedOf(length > 4 ? head : head ^ last, length > 4 ? tail ^ last : 0, length);
  for (let at = start + 4; at < end - 4; at += 4) {
    hash = Math.imul(hash ^ view.getInt32(at), 0x01000193);
    hash ^= hash >>> 15;
  }
  return (spread(hash) + last) | 0;
}

/** A quick hash of what is known of a text by its first four bytes, its last four and its length. */
export function mixedOf(head: number, tail: number, length: number): number {
  return Math.imul(Math.imul(head, 0x9e3779b1) ^ tail ^ length, 0x85ebca6b);
}

/** Mixes a hash downwards, so that its low bits may be used. */
function spread(hash: number): number {
  const mixed = Math.imul(hash ^ (hash >>> 13), 0x5bd1e995);
  return mixed ^ (mixed >>> 15);
}
