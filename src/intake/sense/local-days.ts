import type { FileReading } from '../read-file.js';
import { ZoneClock } from '../time-zone.js';

const quarter = 900_000;
const day = 86_400_000;

/** The calendar days of moments, by the clock of the file that told them or of the row's station. */
export class LocalDays {
  readonly #stationZones = new Map<number, string>();
  readonly #clocks = new Map<string, { readonly clock: ZoneClock; readonly offsets: Map<number, number> }>();

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

  /** Offsets change at whole quarters of an hour only, so that one look at the zone serves every moment in one. */
  #offset(zone: string, moment: number): number {
    let known = this.#clocks.get(zone);
    if (known === undefined) {
      known = { clock: new ZoneClock(zone), offsets: new Map() };
      this.#clocks.set(zone, known);
    }
    const at = Math.floor(moment / quarter);
    let offset = known.offsets.get(at);
    if (offset === undefined) {
      offset = known.clock.offsetAt(at * quarter);
      known.offsets.set(at, offset);
    }
    return offset;
  }
}
