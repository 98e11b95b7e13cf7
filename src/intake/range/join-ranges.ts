import { AsideTexts } from '../aside-texts.js';
import type { Draft } from '../draft.js';
import type { Growable } from '../growing.js';
import type { Texts } from '../key-space.js';
import type { LeftOutRow } from '../leave-out.js';
import { addedTimes } from '../missing-times.js';
import type { RowsRead } from '../read-rows.js';
import { Remarks } from '../remarks.js';
import type { PackedRange } from './packed-range.js';

/** Puts the ranges of one file into its draft, in order; each range is given up as it is taken over. */
export function joinRanges(draft: Draft, ranges: readonly PackedRange[], texts: Texts): RowsRead {
  const rows = ranges.reduce((sum, { rowCount }) => sum + rowCount, 0);
  const [only] = ranges;
  // What one range alone gave is taken over as it lies.
  const isWhole = ranges.length === 1 && only !== undefined;
  if (isWhole) draft.adopt(only.rowCount, only.aside, only.folded);
  else draft.begin(rows);
  const remarks = new Remarks();
  const asideTexts = new AsideTexts();
  const leftOut: LeftOutRow[] = [];
  let read = 0;
  let undecodable = 0;
  let endless: number | null = null;
  let first = 0;
  let linesBefore = 0;
  const firstRows: number[] = [];
  for (const range of ranges) {
    firstRows.push(first);
    draft.places.append(range.places, first, linesBefore);
    if (!isWhole) putFates(draft, range, first);
    remarks.append(range.remarks, first, linesBefore);
    asideTexts.append(range.asideTexts, linesBefore);
    for (const row of range.leftOut) leftOut.push({ ...row, line: row.line + linesBefore });
    read += range.read;
    undecodable += range.undecodable;
    if (range.endless !== null) endless = range.endless + linesBefore;
    first += range.rowCount;
    linesBefore += range.lines;
  }
  joinColumns(draft, ranges, firstRows, texts);
  const missing = addedTimes(ranges.map((range) => range.missing));
  return { remarks, asideTexts, read, leftOut, missing, mended: [], undecodable, endless };
}

function putFates(draft: Draft, range: PackedRange, first: number): void {
  draft.aside.set(range.aside.subarray(0, range.rowCount), first);
  if (draft.fold === null) return;
  const width = draft.fold.columns.length;
  draft.folded.set(range.folded.subarray(0, range.rowCount * width), first * width);
}

function joinColumns(draft: Draft, ranges: readonly PackedRange[], firstRows: readonly number[], texts: Texts): void {
  const known = ranges.map(({ texts: { length } }) => new Array<Uint32Array | undefined>(length));
  for (const [index, { field: name }] of (ranges[0]?.columns ?? []).entries()) {
    const column = draft.columnNamed(name, texts);
    const own = ranges[0]!.columns[index]!.values;
    column.values = ranges.length === 1 ? own : emptyLike(own, draft.rowCount);
    for (const [place, range] of ranges.entries()) {
      const { values, texts: numbering } = range.columns[index]!;
      const part = values.subarray(0, range.rowCount);
      if (numbering === null) {
        if (column.values !== values) column.values.set(part as never, firstRows[place]!);
      } else {
        const codes = known[place]![numbering] ?? column.interner!.codesOf(range.texts[numbering]!);
        known[place]![numbering] = codes;
        putCodes(part as Uint32Array, codes, column.values as Uint32Array, firstRows[place]!);
      }
      // What was taken over is let go at once: a column is never held twice for longer than its copy takes.
      range.columns[index]!.values = new Uint8Array(0);
    }
  }
  for (const [place, { lostKeys, lostKeyTexts }] of ranges.entries()) {
    for (const code of lostKeys) {
      draft.lostKeys.push(lostKeyTexts === null ? code : known[place]![lostKeyTexts]![code]!);
    }
  }
}

function putCodes(part: Uint32Array, codes: Uint32Array, to: Uint32Array, first: number): void {
  for (let row = 0; row < part.length; row++) to[first + row] = codes[part[row]!]!;
}

function emptyLike<A extends Growable>(values: A, length: number): A {
  return new (values.constructor as new (length: number) => A)(length);
}
