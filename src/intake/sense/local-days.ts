import type { FileReading } from '../read-file.js';
import { ZoneClock } from '../time-zone.js';

const quarter = 900_000;
const day = 86_400_000;

/** A zone's clock, and what was asked of it. */
interface KnownClock {
  readonly clock: ZoneClock;
  /** By days of Greenwich: the offset that holds all day; null where it changes. */
  readonly ofDays: Map<number, number | null>;
  readonly ofQuarters: Map<number, number>;
}

/** The calendar days of moments, by the clock of the file that told them or of the row's station. */
export class LocalDays {
  readonly #stationZones = new Map<number, string>();
  readonly #clocks = new Map<string, KnownClock>();

  constructor(all: readonly FileReading[]) {
    for (const { draft } of all) {
      if (draft.table.name !== 'stations') continue;
      const stations = draft.columns.get('station');
      const zones = draft.columns.get('time_zone');
      if (stations === undefined || zones === undefined) continue;
      for (let row = 0; row < draft.rowCount; row++) {
        if (draft.aside[row] === 1) continue;
        this.#stationZones.set(stations.values[row]!, zones.interner!.textOf(zones.values[row]!));
      }
    }
  }

  /** Days since 1970-01-01 of a moment told by a row; its day in Greenwich where no zone is known. */
  dayOf(reading: FileReading, row: number, moment: number): number {
    const station = reading.draft.columns.get('station')?.values[row] ?? 0;
    const zone = reading.rule.timeZone ?? this.#stationZones.get(station);
    return Math.floor((moment + (zone === undefined ? 0 : this.#offset(zone, moment))) / day);
  }

  /**
   * Offsets change at whole quarters of an hour only, so that one look at the zone serves every moment in one; and on few
   * days at all, so that two looks serve every moment of most days.
   */
  #offset(zone: string, moment: number): number {
    let known = this.#clocks.get(zone);
    if (known === undefined) {
      known = { clock: new ZoneClock(zone), ofDays: new Map(), ofQuarters: new Map() };
      this.#clocks.set(zone, known);
    }
    const { clock, ofDays, ofQuarters } = known;
    const today = Math.floor(moment / day);
    let offset = ofDays.get(today);
    if (offset === undefined) {
      const first = clock.offsetAt(today * day);
      offset = first === clock.offsetAt((today + 1) * day) ? first : null;
      ofDays.set(today, offset);
    }
    if (offset !== null) return offset;
    const at = Math.floor(moment / quarter);
    let exact = ofQuarters.get(at);
    if (exact === undefined) {
      exact = clock.offsetAt(at * quarter);
      ofQuarters.set(at, exact);
    }
    return exact;
  }
}
