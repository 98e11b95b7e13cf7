import { join } from 'node:path';
import type { Draft } from '../draft.js';
import type { ReadingRequest } from '../read-file.js';
import type { KnownHeader, RowsRead } from '../read-rows.js';
import { fileFingerprint } from '../source/file-bytes.js';
import { joinRanges } from './join-ranges.js';
import type { PackedRange } from './packed-range.js';
import type { RangePool, RangeThread } from './range-pool.js';
import { type RangeTask, readRange } from './read-range.js';

/** How files are read in ranges, by several threads at once; no result depends on how many, or on the size of a range. */
export interface RangeSettings {
  readonly pool: RangePool;
  /** Bytes of a range; null for large ones first and small ones last, so that all threads end together. */
  readonly length: number | null;
  /** The thread that reads the whole file, while others read other files; null where all share it. */
  readonly alone: RangeThread | null;
  /** The place of the file's crosswalk among all, and of its rule in it. */
  readonly crosswalk: number;
  readonly rule: number;
  /** The zone of each station, by its key. */
  readonly zones: ReadonlyMap<string, string>;
}

/** What reading a file in ranges gave, and the fingerprint of its bytes. */
export interface RangesRead extends RowsRead {
  readonly fingerprint: string;
}

/**
 * Reads the rows behind a header in ranges. Where a range begins can only be guessed: its first line may lie within a quoted
 * cell. It is known once the range before it was read, and a range that guessed wrong is read again from the right place.
 */
export async function readInRanges(
  request: ReadingRequest,
  settings: RangeSettings,
  header: KnownHeader,
  text: { readonly size: number; readonly offset: number; readonly line: number },
  draft: Draft,
): Promise<RangesRead> {
  const { pool, length, alone, crosswalk, rule, zones } = settings;
  const path = join(request.from, request.file);
  const { size } = text;
  const taskFrom = (from: number, to: number, isRowStart: boolean): RangeTask => {
    return { path, size, from, to, isRowStart, header, zones, chunk: request.chunk };
  };
  if (alone !== null) {
    await alone.ready;
    const [range, fingerprint] = await Promise.all([
      alone.ask({ kind: 'range', task: taskFrom(text.offset, size, true), crosswalk, rule }),
      alone.ask({ kind: 'fingerprint', path }),
    ]);
    return { ...joinRanges(draft, [shifted(range, text.line - 1)], request.texts), fingerprint };
  }
  const bounds = boundsOf(text.offset, size, length, pool.threads.length + 1);
  const count = bounds.length - 1;
  const tasks = bounds.slice(1).map((to, place) => taskFrom(bounds[place]!, to, place === 0));
  const ranges: PackedRange[] = [];
  let next = 0;
  let rowsDone = 0;
  let bytesDone = 0;
  const readHere = (task: RangeTask) =>
    readRange(task, request, (rows, bytes) => request.progress(rowsDone + rows, bytesDone + bytes, size));
  const take = async (read: (task: RangeTask) => Promise<PackedRange>): Promise<void> => {
    while (next < count) {
      const place = next++;
      const range = await read(tasks[place]!);
      ranges[place] = range;
      rowsDone += range.read;
      bytesDone += tasks[place]!.to - tasks[place]!.from;
      request.progress(rowsDone, bytesDone, size);
    }
  };
  const [helping] = pool.threads;
  const print = helping?.ready.then(() => helping.ask({ kind: 'fingerprint', path })) ?? fileFingerprint(path);
  const byThreads = pool.threads.map(async (thread) => {
    await thread.ready;
    const asked = (task: RangeTask) => thread.ask({ kind: 'range', task, crosswalk, rule });
    // Two at a time, so that no thread waits for this one to find a moment to answer.
    await Promise.all([take(asked), take(asked)]);
  });
  await Promise.all([take(readHere), print, ...byThreads]);

  const sound: PackedRange[] = [];
  let start = text.offset;
  for (const [place, range] of ranges.entries()) {
    const to = bounds[place + 1]!;
    if (start >= to && place + 1 < count) continue;
    const right = range.start === start ? range : await readHere(taskFrom(start, to, true));
    sound.push(right);
    start = right.end;
    if (right.endless !== null) break;
  }
  // The lines before the first row are the header's, and what stands above it.
  const [first, ...others] = sound;
  const placed = first === undefined ? [] : [shifted(first, text.line - 1), ...others];
  return { ...joinRanges(draft, placed, request.texts), fingerprint: await print };
}

const smallest = 1 << 20;

/** Where ranges are cut: the beginning, each cut, and the end. */
function boundsOf(offset: number, size: number, length: number | null, threads: number): readonly number[] {
  const bounds = [offset];
  for (let at = offset; at < size || bounds.length === 1; ) {
    at = Math.min(size, at + (length ?? Math.max(smallest, Math.ceil((size - at) / (2 * threads)))));
    bounds.push(at);
  }
  return bounds;
}

/** A range whose lines are counted from the beginning of its file. */
function shifted(range: PackedRange, linesBefore: number): PackedRange {
  for (const lines of [range.places.lines, range.remarks.lines, range.asideTexts.lines]) {
    for (let at = 0; at < lines.length; at++) lines[at] = lines[at]! + linesBefore;
  }
  const leftOut = range.leftOut.map((row) => ({ ...row, line: row.line + linesBefore }));
  const endless = range.endless === null ? null : range.endless + linesBefore;
  return { ...range, lines: range.lines + linesBefore, leftOut, endless };
}
