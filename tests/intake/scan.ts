import type { Dialect } from '../../src/intake/crosswalk.js';
import { plainDialect } from '../../src/intake/read-dialect.js';
import { met, RecordScanner } from '../../src/intake/record-scanner.js';

/** A text cut into rows and cells, the bytes handed over in pieces of that size; broken rows are `null`. */
export function scan(
  text: string | Uint8Array,
  chunk = 4096,
  dialect: Partial<Dialect> = {},
  width = 0,
): readonly (readonly string[] | null)[] {
  const bytes = Buffer.from(text);
  const scanner = new RecordScanner({ ...plainDialect, ...dialect }, chunk);
  scanner.width = width;
  const rows: (readonly string[] | null)[] = [];
  let at = 0;
  for (;;) {
    const state = scanner.next();
    if (state === met.end) return rows;
    if (state === met.tooLong) throw new Error('a row without end');
    if (state === met.row) {
      rows.push(scanner.broken ? null : Array.from({ length: scanner.count }, (_, cell) => scanner.cellText(cell)));
      // A header tells how many cells a row has.
      scanner.width ||= scanner.count;
      continue;
    }
    const room = scanner.room();
    const count = Math.min(room.length, chunk, bytes.length - at);
    room.set(bytes.subarray(at, at + count));
    scanner.filled(count);
    at += count;
  }
}
