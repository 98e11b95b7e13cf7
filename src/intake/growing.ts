/** Arrays that rows are appended to. */
export type Growable = Uint8Array | Uint16Array | Uint32Array | Int32Array | Float64Array;

/** A copy of an array with room for that many values, what was there at the front. */
export function grown<A extends Growable>(old: A, length: number): A {
  const wide = new (old.constructor as new (length: number) => A)(length);
  wide.set(old as never);
  return wide;
}
