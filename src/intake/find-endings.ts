import { RowEndings } from './row-endings.js';

/** How many rows are looked at, and how few are not enough. */
const most = 2000;
const enough = 100;
/** Of the later half of them, so many in a hundred may end as none of the earlier half does. */
const mostNew = 25;

/**
 * The endings of rows like those with which some bytes begin, if rows repeat them: behind the fewest first cells for which few
 * later rows end as no earlier one does. Null where no ending repeats that holds two of the columns that are read.
 */
export function findEndings(bytes: Uint8Array, delimiter: number, columnsRead: Int32Array): RowEndings | null {
  const text = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length).toString('latin1');
  // What is cut wrongly, as in quotes, is met rarely or tells the truth: that endings do not repeat.
  let endings = text.split('\n', most).slice(0, -1);
  if (endings.length < enough) return null;
  const mark = String.fromCharCode(delimiter);
  for (let before = 1; columnsRead.filter((column) => column >= before).length > 1; before++) {
    endings = endings.map((ending) => ending.slice(ending.indexOf(mark) + 1));
    const half = endings.length >> 1;
    const met = new Set(endings.slice(0, half));
    const isNew = endings.slice(half).filter((ending) => !met.has(ending)).length;
    if (isNew * 100 <= mostNew * (endings.length - half)) return new RowEndings(before);
  }
  return null;
}
