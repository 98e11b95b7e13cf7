import { numberAt, textAt } from '../../record/column.js';
import type { Records, RecordTable } from '../../record/records.js';
import { millisecondsPerDay } from './calendar.js';
import { numbersOf, textOf } from './columns-of.js';
import { type OffsetAt, zoneOffsets } from './zone-offsets.js';

/** Moments as the station's own clock shows them; -1 minutes where the moment or the station's zone is not known. */
export interface LocalTimes {
  /** Days since 1970-01-01. */
  readonly day: Int32Array;
  /** Minutes since that day's midnight by the clock, 0 to 1439. */
  readonly minute: Int16Array;
}

/** The zone of each station, by its key. */
function zoneByStation(records: Records): Map<string, string> {
  const stations = textOf(records.stations, 'station');
  const zones = textOf(records.stations, 'time_zone');
  const found = new Map<string, string>();
  for (let row = 0; row < records.stations.rowCount; row++) {
    const station = textAt(stations, row);
    const zone = textAt(zones, row);
    if (station !== null && zone !== null) found.set(station, zone);
  }
  return found;
}

function spanOf(values: Float64Array | Int32Array, missing: Uint8Array | null): readonly [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let row = 0; row < values.length; row++) {
    if (missing !== null && missing[row] === 1) continue;
    const value = values[row]!;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return [low, high];
}

/** When each inspection began, by the clock of its station. */
export function localStarts(records: Records): LocalTimes {
  return localTimes(records, records.inspections, 'started_at');
}

/** A moment of each row of a table with stations, by the clock of the row's station. */
export function localTimes(records: Records, table: RecordTable, moment: string): LocalTimes {
  const { rowCount } = table;
  const stations = textOf(table, 'station');
  const starts = numbersOf(table, moment);
  const [from, to] = spanOf(starts.values, starts.missing);
  const zones = zoneByStation(records);
  const offsets = new Map<string, OffsetAt | null>();
  const offsetOfStation = stations.dictionary.map((station) => {
    const zone = zones.get(station);
    if (zone === undefined || from > to) return null;
    if (!offsets.has(zone)) offsets.set(zone, zoneOffsets(zone, from, to));
    return offsets.get(zone)!;
  });
  const day = new Int32Array(rowCount);
  const minute = new Int16Array(rowCount).fill(-1);
  for (let row = 0; row < rowCount; row++) {
    const start = numberAt(starts, row);
    const offset = offsetOfStation[stations.codes[row]!]!;
    if (start === null || offset === null) continue;
    const clock = start + offset(start);
    day[row] = Math.floor(clock / millisecondsPerDay);
    minute[row] = Math.floor((clock - day[row]! * millisecondsPerDay) / 60_000);
  }
  return { day, minute };
}
