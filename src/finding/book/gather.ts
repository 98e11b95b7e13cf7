import type { BookColumn } from '../../record/book.js';
import { codeArray } from '../../record/column.js';

/** A parent's column as its children see it: the value at each child's parent row. */
export function gather(column: BookColumn, parentOf: Int32Array): BookColumn {
  const count = parentOf.length;
  if (column.kind === 'text') {
    const { codes: from, dictionary } = column;
    const codes = codeArray(count, dictionary.length);
    for (let row = 0; row < count; row++) codes[row] = from[parentOf[row]!]!;
    return { kind: 'text', codes, dictionary };
  }
  if (column.kind === 'wait') {
    const minutes = Float64Array.from(parentOf, (parent) => column.minutes[parent]!);
    const ending = Uint8Array.from(parentOf, (parent) => column.ending[parent]!);
    return { kind: 'wait', minutes, ending };
  }
  const { values: from, missing: fromMissing } = column;
  const values = from instanceof Int32Array ? new Int32Array(count) : new Float64Array(count);
  for (let row = 0; row < count; row++) values[row] = from[parentOf[row]!]!;
  if (fromMissing === null) return { kind: 'number', values, missing: null };
  const missing = new Uint8Array(count);
  for (let row = 0; row < count; row++) missing[row] = fromMissing[parentOf[row]!]!;
  return { kind: 'number', values, missing };
}
