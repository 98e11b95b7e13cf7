import type { Craft } from '../../datasets/quillwater/generate/craft.js';
import { type CraftPool, craftPool } from '../../datasets/quillwater/generate/craft-pool.js';
import type { Inspection } from '../../datasets/quillwater/generate/inspection.js';
import { seasonInspections } from '../../datasets/quillwater/generate/inspections.js';
import { parts } from '../../datasets/quillwater/generate/parts.js';
import { type StationDay, stationDays } from '../../datasets/quillwater/generate/station-days.js';
import { stations } from '../../datasets/quillwater/generate/stations.js';
import { orderWashes } from '../../datasets/quillwater/generate/washes.js';
import { openBook } from '../../src/finding/book.js';
import type { Book } from '../../src/record/book.js';
import { type SmallRow, smallRecords, smallSum } from '../finding/small-records.js';

/** The season that is drawn again and again. */
export const season = 2025;

/** One season of the invented basin: what happened there, and the records of it, with nothing spoilt. */
export interface SmallSeason {
  readonly inspections: readonly Inspection[];
  readonly book: Book;
}

/**
 * Moments of a station's clock as if it ran in UTC. All of a season's stations then share one zone, which moves no rate
 * and no length of time, since the generator counts elapsed minutes on the same clock.
 */
const instant = (moment: number): string => new Date(moment * 60_000).toISOString();
const day = (number: number): string => new Date(number * 86_400_000).toISOString().slice(0, 10);

function inspectionRow(one: Inspection, number: string): SmallRow {
  return {
    inspection: number,
    station: one.station.station,
    started_at: instant(one.started),
    finished_at: instant(one.finished),
    direction: one.direction,
    extent: one.extent,
    watercraft_type: one.craft.type,
    drive: one.craft.drive,
    outcome: one.outcome,
  };
}

function checkRows(one: Inspection, number: string): SmallRow[] {
  return one.looks.map(({ part, side, state, found }) => ({
    inspection: number,
    component: parts[part]!.part,
    side,
    state,
    finding: found?.finding ?? null,
    stage: found?.stage ?? null,
    abundance: found?.abundance ?? null,
  }));
}

function washRow(one: Inspection, number: string): SmallRow[] {
  if (one.wash === null) return [];
  const { ordered, started, finished, released, ending } = one.wash;
  const at = (moment: number | null): string | null => (moment === null ? null : instant(moment));
  const moments = { started_at: at(started), finished_at: at(finished), released_at: at(released) };
  return [{ wash: number, inspection: number, ordered_at: instant(ordered), ...moments, ending }];
}

/** The season of a seed, at a size against the demo's. */
export function smallSeason(seed: number, scale: number): SmallSeason {
  const visitors: Craft[] = [];
  const serials = { next: 1 };
  const inspections = stations.flatMap((place) => {
    const pool: CraftPool = craftPool(seed, scale, place, serials, visitors);
    const days: readonly StationDay[] = stationDays(seed, scale, season, place);
    const own = seasonInspections(seed, days, pool);
    orderWashes(seed, own);
    return own;
  });
  const numbers = inspections.map((_, at) => `${at}`);
  const records = smallRecords({
    stations: stations.map(({ station, name, setting }) => ({ station, name, setting, time_zone: 'UTC' })),
    inspections: inspections.map((one, at) => inspectionRow(one, numbers[at]!)),
    // Looks at craft that arrive say nothing of the lake's fouling sites; a tenth of the time without them.
    checks: inspections.flatMap((one, at) => (one.direction === 'leaving' ? checkRows(one, numbers[at]!) : [])),
    decontaminations: inspections.flatMap((one, at) => washRow(one, numbers[at]!)),
  });
  return { inspections, book: openBook(records, smallSum(`${day(Date.UTC(season, 11, 1) / 86_400_000)}T00:00Z`)) };
}
