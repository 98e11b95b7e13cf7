import { calendarDay, elapsedMinutes } from './calendar.js';
import type { WrittenFile } from './export-file.js';
import type { Inspection } from './inspection.js';
import { foundMussels, type Look } from './looks.js';
import { parts } from './parts.js';
import type { Spending } from './spending.js';
import type { StationDay } from './station-days.js';
import type { Wash } from './washes.js';

type Counts = Record<string, number>;

const wideCells = parts.reduce((sum, { sided }) => sum + (sided ? 2 : 1), 0);

/** What is true of a season's records that are kept, by the generator's own objects. */
export interface SeasonFigures {
  inspections: number;
  full: number;
  paperChecks: number;
  /** Outcome intercepted, among full inspections. */
  intercepted: number;
  readonly byDirection: Counts;
  readonly fullByDirection: Counts;
  readonly interceptedByDirection: Counts;
  readonly byStation: Counts;
  readonly interceptedByStation: Counts;
  readonly byMonth: Counts;
  readonly interceptedByMonth: Counts;
  /** Full inspections of craft that were not leaving, and how many of them intercepted. */
  readonly arrivalsByMonth: Counts;
  readonly interceptedArrivalsByMonth: Counts;
  readonly byWatercraftType: Counts;
  readonly byOutcome: Counts;
  standingWater: number;
  vegetation: number;
  readonly stationDays: { open: number; closed: number; notRecorded: number; staffHours: number; withoutHours: number };
  checks: number;
  rechecks: number;
  /** Craft leaving the positive lake. */
  readonly leaving: {
    inspections: number;
    /** Craft with mussels on at least one part. */
    fouled: number;
    readonly moored: { inspections: number; fouled: number };
    readonly components: Record<string, ComponentFigures>;
  };
  readonly washes: { count: number; held: number; leftUnwashed: number; wait: number | null; washing: number | null };
}

/** Craft, each counted once whatever its sides. */
export interface ComponentFigures {
  carrying: number;
  looked: number;
  fouled: number;
  skipped: number;
  /** Craft on which it was the only fouled part. */
  sole: number;
}

export interface Figures {
  readonly about: string;
  readonly seasons: Record<string, SeasonFigures>;
  /** Dollars by fiscal year and category. */
  readonly spending: Record<string, Counts>;
  readonly rows: Counts;
}

function add(counts: Counts, key: string, by = 1): void {
  counts[key] = (counts[key] ?? 0) + by;
}

function emptySeason(): SeasonFigures {
  return {
    inspections: 0,
    full: 0,
    paperChecks: 0,
    intercepted: 0,
    byDirection: {},
    fullByDirection: {},
    interceptedByDirection: {},
    byStation: {},
    interceptedByStation: {},
    byMonth: {},
    interceptedByMonth: {},
    arrivalsByMonth: {},
    interceptedArrivalsByMonth: {},
    byWatercraftType: {},
    byOutcome: {},
    standingWater: 0,
    vegetation: 0,
    stationDays: { open: 0, closed: 0, notRecorded: 0, staffHours: 0, withoutHours: 0 },
    checks: 0,
    rechecks: 0,
    leaving: {
      inspections: 0,
      fouled: 0,
      moored: { inspections: 0, fouled: 0 },
      components: Object.fromEntries(
        parts.map(({ part }) => [part, { carrying: 0, looked: 0, fouled: 0, skipped: 0, sole: 0 }]),
      ),
    },
    washes: { count: 0, held: 0, leftUnwashed: 0, wait: null, washing: null },
  };
}

/** The middle value, the mean of the two middle ones for an even count; null for none. */
function median(values: readonly number[]): number | null {
  if (values.length === 0) return null;
  const sorted = [...values].sort((a, b) => a - b);
  const middle = (sorted.length - 1) / 2;
  return (sorted[Math.floor(middle)]! + sorted[Math.ceil(middle)]!) / 2;
}

/** Counts records as they are written; only kept ones are counted. */
export class FigureBook {
  readonly #seasons: Record<string, SeasonFigures> = {};
  readonly #spending: Record<string, Counts> = {};
  readonly #waits = new Map<number, { wait: number[]; washing: number[] }>();

  countInspection(
    inspection: Inspection,
    lost: ReadonlySet<Look> | undefined,
    lostAgain: ReadonlySet<Look> | undefined,
  ): void {
    if (!inspection.kept) return;
    const season = this.#season(inspection.season);
    const full = inspection.extent === 'full';
    const intercepted = full && inspection.outcome === 'intercepted';
    const month = String(calendarDay(Math.floor(inspection.started / 1440)).month);
    season.inspections++;
    if (full) season.full++;
    else season.paperChecks++;
    add(season.byDirection, inspection.direction);
    if (full) add(season.fullByDirection, inspection.direction);
    const arrival = full && inspection.direction !== 'leaving';
    if (arrival) add(season.arrivalsByMonth, month);
    if (arrival && intercepted) add(season.interceptedArrivalsByMonth, month);
    add(season.byStation, inspection.station.station);
    add(season.byMonth, month);
    add(season.byWatercraftType, inspection.craft.type);
    add(season.byOutcome, inspection.outcome);
    if (intercepted) {
      season.intercepted++;
      add(season.interceptedByDirection, inspection.direction);
      add(season.interceptedByStation, inspection.station.station);
      add(season.interceptedByMonth, month);
    }
    if (inspection.water === 'yes' || (inspection.water === 'damp' && inspection.season >= 2025))
      season.standingWater++;
    if (inspection.vegetation) season.vegetation++;
    const looks = inspection.looks.filter((look) => !lost?.has(look));
    // A wide form has a cell for every part, whether or not the walk came to it.
    const cells = inspection.station.setting === 'launch' ? looks.length : wideCells;
    season.checks += cells;
    season.rechecks += (inspection.recheck?.looks ?? []).filter((look) => !lostAgain?.has(look)).length;
    if (inspection.direction === 'leaving') countLeaving(season.leaving, inspection, looks);
    if (inspection.wash?.kept) this.#countWash(season, inspection.season, inspection.wash);
  }

  countDay(day: StationDay): void {
    if (!day.kept) return;
    const { stationDays: sum } = this.#season(calendarDay(day.day).year);
    if (day.state === 'open') sum.open++;
    else if (day.state === 'closed') sum.closed++;
    else sum.notRecorded++;
    if (day.staffHours !== null) sum.staffHours += day.staffHours;
    else if (day.state === 'open') sum.withoutHours++;
  }

  countSpending({ kept, year, category, amount }: Spending): void {
    if (!kept) return;
    this.#spending[year] ??= {};
    const counts = this.#spending[year];
    counts[category] = Math.round(((counts[category] ?? 0) + amount) * 100) / 100;
  }

  #season(season: number): SeasonFigures {
    this.#seasons[season] ??= emptySeason();
    return this.#seasons[season];
  }

  #countWash(season: SeasonFigures, year: number, wash: Wash): void {
    season.washes.count++;
    if (wash.released === null) season.washes.held++;
    if (wash.ending === 'left unwashed') season.washes.leftUnwashed++;
    const waits = this.#waits.get(year) ?? { wait: [], washing: [] };
    this.#waits.set(year, waits);
    if (wash.started !== null) waits.wait.push(elapsedMinutes(wash.ordered, wash.started));
    if (wash.started !== null && wash.finished !== null)
      waits.washing.push(elapsedMinutes(wash.started, wash.finished));
  }

  /** All figures, with the rows of each file. */
  figures(files: readonly WrittenFile[]): Figures {
    for (const [year, { wait, washing }] of this.#waits) {
      const { washes } = this.#season(year);
      washes.wait = median(wait);
      washes.washing = median(washing);
    }
    return {
      about:
        'Counted by the generator over its own objects, for rows that an importer keeps; never read from the exports. ' +
        'Medians are of completed waits and washes, in minutes.',
      seasons: this.#seasons,
      spending: this.#spending,
      rows: Object.fromEntries(files.map(({ file, rows }) => [file, rows])),
    };
  }
}

function countLeaving(leaving: SeasonFigures['leaving'], inspection: Inspection, looks: readonly Look[]): void {
  leaving.inspections++;
  if (inspection.moored) leaving.moored.inspections++;
  const fouled = new Set(looks.filter(foundMussels).map(({ part }) => part));
  if (fouled.size > 0) leaving.fouled++;
  if (fouled.size > 0 && inspection.moored) leaving.moored.fouled++;
  parts.forEach(({ part }, index) => {
    const states = looks.filter((look) => look.part === index).map(({ state }) => state);
    if (!states.some((state) => state !== 'absent')) return;
    const counts = leaving.components[part]!;
    counts.carrying++;
    if (states.some((state) => state === 'clean' || state === 'fouled')) counts.looked++;
    else counts.skipped++;
    if (fouled.has(index)) counts.fouled++;
    if (fouled.has(index) && fouled.size === 1) counts.sole++;
  });
}
