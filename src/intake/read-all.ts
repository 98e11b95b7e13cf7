import { tables } from '../record/tables.js';
import type { Crosswalk } from './crosswalk.js';
import type { Task } from './find-exports.js';
import type { ImportRequest } from './import-exports.js';
import type { Texts } from './key-space.js';
import type { MendedFiles } from './mending/take-corrections.js';
import type { RangeThread } from './range/range-pool.js';
import type { RangeSettings } from './range/read-in-ranges.js';
import { type FileReading, readFile } from './read-file.js';
import type { ReadingThreads } from './reading-threads.js';
import type { PastReading } from './recall/past-import.js';
import { Recall } from './recall/recall-reading.js';
import { ZoneClock } from './time-zone.js';

/** How far an import has come. */
export interface ImportProgress {
  readonly file: string;
  /** The file's place among all, from 1. */
  readonly fileNumber: number;
  readonly fileCount: number;
  /** Rows of this file so far. */
  readonly rows: number;
  /** Bytes over all files. */
  readonly bytesDone: number;
  readonly bytesTotal: number;
}

/** The zone of each station, by the number of its key. */
class StationZones {
  readonly #texts: Texts;
  readonly #zones = new Map<number, string>();

  constructor(texts: Texts) {
    this.#texts = texts;
  }

  remember({ draft }: FileReading): void {
    const station = draft.columns.get('station');
    const zone = draft.columns.get('time_zone');
    if (draft.table.name !== 'stations' || station === undefined || zone === undefined) return;
    for (let row = 0; row < draft.rowCount; row++) {
      if (draft.aside[row] === 0) this.#zones.set(station.values[row]!, zone.interner!.textOf(zone.values[row]!));
    }
  }

  of(station: number): string | undefined {
    return this.#zones.get(station);
  }

  byKey(): ReadonlyMap<string, string> {
    const { interner } = this.#texts.spaceOf('stations');
    return new Map([...this.#zones].map(([station, zone]) => [interner.textOf(station), zone]));
  }
}

/**
 * Reads the files, those of parent tables first; the readings come back in the order of the tasks. Files known from the
 * import before are recalled instead.
 */
export async function readAll(
  tasks: readonly Task[],
  crosswalks: readonly Crosswalk[],
  request: ImportRequest,
  texts: Texts,
  known: ReadonlyMap<number, PastReading>,
  mended: MendedFiles,
  threads: ReadingThreads,
): Promise<readonly FileReading[]> {
  const recall = request.past ? new Recall(request.past, texts) : null;
  const clocks = new Map<string, ZoneClock>();
  const clockOf = (zone: string): ZoneClock => {
    const clock = clocks.get(zone) ?? new ZoneClock(zone);
    clocks.set(zone, clock);
    return clock;
  };
  const zones = new StationZones(texts);
  const bytesTotal = tasks.reduce((sum, { bytes }, place) => sum + (known.has(place) ? 0 : bytes), 0);
  const inOrder = tables.flatMap((table) => [...tasks.entries()].filter(([, { rule }]) => rule.table === table));
  const toRead = inOrder.filter(([place]) => recall === null || !known.has(place));
  const { pool, apart } = threads;
  const rangesOf = ({ crosswalk, rule }: Task, alone: RangeThread | null): RangeSettings | null => {
    const place = crosswalk.files.indexOf(rule);
    if (pool === null || place < 0 || (apart.size > 0 && alone === null)) return null;
    const length = request.range ?? null;
    return { pool, length, alone, crosswalk: crosswalks.indexOf(crosswalk), rule: place, zones: zones.byKey() };
  };
  let bytesDone = 0;
  let fileNumber = 0;
  const readings: FileReading[] = [];
  const read = async ([place, task]: readonly [number, Task], alone: RangeThread | null): Promise<void> => {
    const past = known.get(place);
    if (past !== undefined && recall !== null) {
      readings[place] = recall.reading(past, task, place);
      zones.remember(readings[place]);
      return;
    }
    fileNumber++;
    const number = fileNumber;
    const reading = await readFile({
      from: request.from,
      file: task.file,
      place,
      rule: task.rule,
      crosswalk: task.crosswalk.name,
      texts,
      key: request.key,
      clockOf,
      stationClock: (station) => {
        const zone = zones.of(station);
        return zone === undefined ? null : clockOf(zone);
      },
      chunk: request.chunk ?? 1 << 18,
      ranges: rangesOf(task, alone),
      mended: mended.get(place) ?? [],
      // What is unpacked or made from a sheet has another size than the file that holds it.
      progress: (rows, done, size) =>
        request.progress({
          file: task.file,
          fileNumber: number,
          fileCount: toRead.length,
          rows,
          bytesDone: bytesDone + (size === 0 ? 0 : Math.round((task.bytes * Math.min(done, size)) / size)),
          bytesTotal,
        }),
    });
    bytesDone += task.bytes;
    readings[place] = reading;
    zones.remember(reading);
  };
  for (const one of inOrder) if (!apart.has(one[0])) await read(one, null);
  // Each thread takes the largest that is left, this one first: the others have yet to start.
  const waiting = toRead.filter(([place]) => apart.has(place)).sort(([, a], [, b]) => b.bytes - a.bytes);
  const lane = async (thread: RangeThread | null): Promise<void> => {
    for (let one = waiting.shift(); one !== undefined; one = waiting.shift()) await read(one, thread);
  };
  if (waiting.length > 0) await Promise.all([lane(null), ...pool!.threads.map(lane)]);
  return readings;
}
