import { open } from 'node:fs/promises';
import type { FileRule } from '../crosswalk.js';
import { Draft } from '../draft.js';
import { fittedRule } from '../fitted-rule.js';
import { Texts } from '../key-space.js';
import { type KnownHeader, readRows } from '../read-rows.js';
import { RecordScanner } from '../record-scanner.js';
import type { ZoneClock } from '../time-zone.js';
import { type PackedRange, packRange } from './packed-range.js';
import { lineStart, RangeText } from './range-text.js';

/** Which rows of which file to read: those that begin at or behind `from`, and before `to`. */
export interface RangeTask {
  /** The path on disk. */
  readonly path: string;
  readonly size: number;
  readonly from: number;
  readonly to: number;
  /** Whether a row begins at `from`; otherwise the first line behind it is taken for one. */
  readonly isRowStart: boolean;
  readonly header: KnownHeader;
  /** The zone of each station, by its key. */
  readonly zones: ReadonlyMap<string, string>;
  readonly chunk: number;
}

/** What a range's cells are read by. */
export interface RangeRules {
  readonly rule: FileRule;
  readonly key: Uint8Array;
  readonly clockOf: (zone: string) => ZoneClock;
  /** The numbering of the whole import, for the thread that has it; null where the range numbers its texts for itself. */
  readonly texts: Texts | null;
}

/** Reads the rows of one range. */
export async function readRange(
  task: RangeTask,
  { rule: whole, key, clockOf, texts: shared }: RangeRules,
  progress: (rows: number, bytes: number) => void,
): Promise<PackedRange> {
  const { path, size, from, to, zones } = task;
  const rule = fittedRule(whole, (column) => task.header.header.has(column));
  const handle = await open(path, 'r');
  try {
    const start = task.isRowStart ? from : await lineStart(handle, from, size);
    const texts = shared ?? new Texts();
    const draft = new Draft(rule.table, 0, Math.max(0, to - start), rule.fields, rule.fold, start);
    const scanner = new RecordScanner(rule.dialect, task.chunk);
    const source = new RangeText(handle, size);
    scanner.moveTo(start, 1);
    scanner.until = to;
    await source.seek(start);
    const stations = texts.spaceOf('stations').interner;
    const clocks = new Map<number, ZoneClock | null>();
    const stationClock = (station: number): ZoneClock | null => {
      let clock = clocks.get(station);
      if (clock === undefined) {
        const zone = zones.get(stations.textOf(station));
        clock = zone === undefined ? null : clockOf(zone);
        clocks.set(station, clock);
      }
      return clock;
    };
    const request = { rule, texts, key, clockOf, stationClock, mended: [] };
    const rows = await readRows(request, task.header, scanner, source, draft, (read) => progress(read, source.done));
    return packRange(draft, rows, shared !== null, {
      start,
      end: Math.max(start, scanner.offset),
      lines: scanner.nextLine - 1,
    });
  } finally {
    await handle.close();
  }
}
