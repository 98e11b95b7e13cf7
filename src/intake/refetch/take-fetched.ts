import { letGo } from '../let-go.js';
import type { FileReading } from '../read-file.js';
import type { FetchedRows } from './fetch-rows.js';

/**
 * Puts what was fetched from a file to the remarks it was lacking in, and to the rows set aside; it is used up.
 * @param remarkOf the remark that each cell is for
 */
export function takeFetched({ remarks, asideTexts }: FileReading, remarkOf: Uint32Array, fetched: FetchedRows): void {
  const { cells, cellEnds, rows } = fetched;
  for (let cell = 0, start = 0; cell < remarkOf.length; cell++) {
    remarks.putSeenBytes(remarkOf[cell]!, cells, start, cellEnds[cell]!);
    start = cellEnds[cell]!;
  }
  asideTexts.append(rows, 0);
  for (const array of [cells, cellEnds, rows.bytes, rows.lines, rows.ends]) letGo(array);
}
