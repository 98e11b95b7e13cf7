import { type CodeArray, codeArray } from '../record/column.js';
import { letGo } from './let-go.js';

/** The codes by their new numbers, in the narrowest array that holds as many as the new numbering has; the former are used up. */
export function renumbered(codes: Uint32Array, newCodeOf: Uint32Array, size: number): CodeArray {
  const narrow = size <= 0x10000 ? codeArray(codes.length, size) : codes;
  if (narrow instanceof Uint8Array) renumberToBytes(codes, newCodeOf, narrow);
  else if (narrow instanceof Uint16Array) renumberToPairs(codes, newCodeOf, narrow);
  else renumberInPlace(codes, newCodeOf);
  if (narrow !== codes) letGo(codes);
  return narrow;
}

function renumberToBytes(codes: Uint32Array, newCodeOf: Uint32Array, to: Uint8Array): void {
  for (let row = 0; row < codes.length; row++) to[row] = newCodeOf[codes[row]!]!;
}

function renumberToPairs(codes: Uint32Array, newCodeOf: Uint32Array, to: Uint16Array): void {
  for (let row = 0; row < codes.length; row++) to[row] = newCodeOf[codes[row]!]!;
}

function renumberInPlace(codes: Uint32Array, newCodeOf: Uint32Array): void {
  for (let row = 0; row < codes.length; row++) codes[row] = newCodeOf[codes[row]!]!;
}
