import type { Clusters } from '../../record/book.js';
import { numberAt } from '../../record/column.js';
import type { Records, RecordTable } from '../../record/records.js';
import { dateOfDay } from './calendar.js';
import { codeOf, numbersOf, textOf } from './columns-of.js';
import type { LocalTimes } from './local-time.js';

/** The station-days of the records, and the one that each inspection and each recorded station-day belongs to. */
export interface StationDayClusters {
  readonly clusters: Clusters;
  readonly ofInspections: Uint32Array;
  readonly ofStationDays: Uint32Array;
}

/** Tells days of one station from those of the next in one number: more days than any calendar holds. */
const daysApart = 4_000_000;

/** Gives each key a number, in order of first appearance. */
function numbering<Key>(): (key: Key) => number {
  const numbers = new Map<Key, number>();
  return (key) => {
    const known = numbers.get(key);
    if (known !== undefined) return known;
    numbers.set(key, numbers.size);
    return numbers.size - 1;
  };
}

interface StationDay {
  /** Station and season, and whether the station was open or had inspections. */
  stratum: string;
  active: boolean;
}

class StationDayList {
  readonly days: StationDay[] = [];
  readonly #numberOf = numbering<number>();
  readonly #stationOf = numbering<string>();

  /** The number of a station for each code of a dictionary. */
  stations(dictionary: readonly string[]): number[] {
    return dictionary.map((text) => this.#stationOf(text));
  }

  /** The cluster of a station's day; it is active once anything says so. */
  at(station: number, day: number, active: boolean): number {
    const cluster = this.#numberOf(station * daysApart + day);
    const known = this.days[cluster];
    if (known === undefined) this.days.push({ stratum: `${station} ${dateOfDay(day).year}`, active });
    else if (active) known.active = true;
    return cluster;
  }

  /** The one cluster of all rows whose station-day is not known; alone in its stratum, it is there in every resample. */
  unknown(): number {
    const cluster = this.#numberOf(-1);
    if (cluster === this.days.length) this.days.push({ stratum: 'unknown', active: false });
    return cluster;
  }
}

function ofStationDays(list: StationDayList, table: RecordTable): Uint32Array {
  const station = textOf(table, 'station');
  const dates = numbersOf(table, 'date');
  const state = textOf(table, 'state');
  const open = codeOf(state, 'open');
  const numbers = list.stations(station.dictionary);
  const clusters = new Uint32Array(table.rowCount);
  for (let row = 0; row < clusters.length; row++) {
    const day = numberAt(dates, row);
    clusters[row] =
      day === null ? list.unknown() : list.at(numbers[station.codes[row]!]!, day, state.codes[row] === open);
  }
  return clusters;
}

function ofInspections(list: StationDayList, table: RecordTable, local: LocalTimes): Uint32Array {
  const station = textOf(table, 'station');
  const numbers = list.stations(station.dictionary);
  const clusters = new Uint32Array(table.rowCount);
  for (let row = 0; row < clusters.length; row++) {
    const repeats =
      row > 0 &&
      station.codes[row] === station.codes[row - 1] &&
      local.day[row] === local.day[row - 1] &&
      local.minute[row]! >= 0 === local.minute[row - 1]! >= 0;
    if (repeats) clusters[row] = clusters[row - 1]!;
    else if (local.minute[row]! < 0) clusters[row] = list.unknown();
    else clusters[row] = list.at(numbers[station.codes[row]!]!, local.day[row]!, true);
  }
  return clusters;
}

/**
 * The station-days in order of first appearance: every recorded one, then those known only from inspections. The
 * stratum is the station and season; days that were not open and have no inspections (closed, or not recorded) form
 * strata of their own, so that a resample never trades an open day for a closed one.
 */
export function stationDayClusters(records: Records, local: LocalTimes): StationDayClusters {
  const list = new StationDayList();
  const byDay = ofStationDays(list, records.station_days);
  const byInspection = ofInspections(list, records.inspections, local);
  const stratum = numbering<string>();
  const stratumOf = Uint32Array.from(list.days, (day) => stratum(day.active ? day.stratum : `${day.stratum} idle`));
  return {
    clusters: { count: list.days.length, stratumOf },
    ofInspections: byInspection,
    ofStationDays: byDay,
  };
}
