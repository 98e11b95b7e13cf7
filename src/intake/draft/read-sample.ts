import { isUtf8 } from 'node:buffer';
import type { Dialect } from '../crosswalk.js';
import { plainDialect } from '../read-dialect.js';
import { locate } from '../source/container.js';
import type { Encoding } from '../source/encoding.js';
import { openSource } from '../source/open-source.js';
import { PlainFile } from '../source/plain-file.js';
import type { MergedCells } from '../source/sheet-rows.js';
import { SourceError } from '../source/text-source.js';
import { cutSample } from './cut-sample.js';
import type { Sample } from './sample.js';

/** How much is looked at in one go, at the beginning, in the middle and at the end of a file. */
const window = 1 << 18;

interface Windows {
  readonly parts: readonly Uint8Array[];
  readonly isWhole: boolean;
  /** The merged cells of a sheet. */
  readonly merged: readonly MergedCells[];
}

/** `header` tells of a sheet in which rows merged cells share their text to the right. */
async function readWindows(
  from: string,
  file: string,
  encoding: Encoding,
  isSheet: boolean,
  header: Pick<Dialect, 'headerLine' | 'headerSpan'> = plainDialect,
): Promise<Windows> {
  const { headerLine, headerSpan } = header;
  const dialect = { ...plainDialect, encoding, isSheet, headerLine, headerSpan };
  const source = await openSource(from, file, { dialect, decimalByte: 46 }, window);
  try {
    const take = async (): Promise<Uint8Array> => {
      const bytes = new Uint8Array(window);
      let length = 0;
      while (length < window) {
        const count = await source.read(bytes.subarray(length));
        if (count === 0) break;
        length += count;
      }
      return bytes.subarray(0, length);
    };
    const { merged = [] } = source;
    const first = await take();
    if (first.length < window) return { parts: [first], isWhole: true, merged };
    // Text that must be unpacked or converted first is not skipped through.
    if (!(source instanceof PlainFile) || source.size < 4 * window) {
      const second = await take();
      return { parts: [Buffer.concat([first, second])], isWhole: second.length < window, merged };
    }
    await source.seek(Math.floor(source.size / 2));
    const middle = await take();
    await source.seek(source.size - window);
    return { parts: [first, middle, await take()], isWhole: false, merged };
  } finally {
    await source.close();
  }
}

/** A bounded part of an exported file; throws a `SourceError` where it is none. Nothing of it is kept on disk. */
export async function readSample(from: string, file: string): Promise<Sample> {
  const { isWorkbook } = await locate(from, file);
  let encoding: Encoding = 'utf-8';
  let encodingIsSure = true;
  let windows: Windows;
  try {
    windows = await readWindows(from, file, encoding, isWorkbook);
  } catch (mistake) {
    if (!(mistake instanceof SourceError) || mistake.fault.code !== 'encoding-in-doubt') throw mistake;
    encoding = 'utf-16';
    windows = await readWindows(from, file, encoding, isWorkbook);
  }
  // A letter of several bytes may be cut where a part ends, so that only bytes well within it count.
  const within = windows.parts[0]!.subarray(0, windows.isWhole ? undefined : windows.parts[0]!.lastIndexOf(10));
  if (encoding === 'utf-8' && !isUtf8(within)) {
    encoding = 'windows-1252';
    encodingIsSure = false;
    windows = await readWindows(from, file, encoding, isWorkbook);
  }
  let cut = cutSample(windows.parts, windows.isWhole, isWorkbook);
  const { merged } = windows;
  // Cells of a header are merged as its rows say, and which rows those are is known only now.
  const isBelow = ({ fromRow, toRow }: MergedCells) => fromRow <= cut.headerLine + 1 && toRow >= cut.headerLine;
  if (isWorkbook && merged.some(isBelow)) {
    windows = await readWindows(from, file, encoding, isWorkbook, { headerLine: cut.headerLine, headerSpan: 2 });
    cut = cutSample(windows.parts, windows.isWhole, isWorkbook);
  }
  const { isWhole } = windows;
  const hasMergedRows = merged.some(
    ({ fromRow, toRow }) => toRow > Math.max(fromRow, cut.headerLine + cut.headerSpan - 1),
  );
  return { file, encoding, encodingIsSure, isWhole, hasMergedRows, ...cut };
}
