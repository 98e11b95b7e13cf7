import * as truth from '../truth.js';
import { calendarDay, clearOfClockChange, cutOffMoment, type Moment } from './calendar.js';
import type { Inspection } from './inspection.js';
import { type Random, randomStream } from './random.js';

/** One wash of one craft; what had not happened by the cut-off is null. */
export interface Wash {
  /** Numbered within its season and export format when the season is put in order. */
  number: string;
  readonly inspection: Inspection;
  readonly reason: string;
  readonly ordered: Moment;
  readonly started: Moment | null;
  readonly finished: Moment | null;
  readonly released: Moment | null;
  readonly ending: 'released' | 'left unwashed' | null;
  readonly method: string;
  readonly unit: string;
  readonly contactF: number | null;
  readonly nozzleF: number | null;
  readonly standOffFeet: number | null;
  readonly contactSeconds: number | null;
  readonly flushMinutes: number | null;
  readonly flushExitF: number | null;
  readonly effluent: string;
  readonly recheck: string | null;
  kept: boolean;
}

/** Every wash that a season's inspections of one station ordered. */
export function orderWashes(seed: number, inspections: readonly Inspection[]): void {
  const first = inspections[0];
  if (first === undefined) return;
  const random = randomStream(seed, `washes ${first.season} ${first.station.station}`);
  for (const inspection of inspections) {
    const { outcome } = inspection;
    if (outcome === 'intercepted' || outcome === 'washed as a precaution') inspection.wash = wash(random, inspection);
  }
}

function reasonOf(random: Random, inspection: Inspection): string {
  if (inspection.outcome === 'intercepted') return 'mussels';
  if (inspection.water === 'yes') return 'standing water';
  if (inspection.vegetation) return 'plants';
  if (inspection.direction === 'leaving') return 'leaving a positive water';
  return random.chance(0.3) ? 'ballast' : 'owner request';
}

function dryingDays(ordered: Moment): number {
  const { month } = calendarDay(Math.floor(ordered / 1440));
  return month >= 6 && month <= 8 ? truth.dryingHold.summerDays : truth.dryingHold.otherDays;
}

function wash(random: Random, inspection: Inspection): Wash {
  const { station, outcome } = inspection;
  const cutOff = cutOffMoment(station.zone);
  const happened = (moment: Moment): Moment | null => {
    const clear = clearOfClockChange(Math.round(moment));
    return clear <= cutOff ? clear : null;
  };
  const ordered = inspection.finished;
  const wait = random.logNormal(station.wait, truth.waitSpread);
  const patience = random.exponential(truth.patienceMinutes);
  const leaves = patience < wait;
  const washing = random.logNormal(truth.washMinutes.median, truth.washMinutes.spread);
  const held = random.logNormal(truth.holdMinutes.median, truth.holdMinutes.spread);
  const dries = outcome === 'intercepted' && random.chance(truth.dryingHold.share);
  const started = leaves ? null : happened(ordered + wait);
  const finished = started === null ? null : happened(started + Math.max(1, Math.round(washing)));
  const released = leaves
    ? happened(ordered + Math.max(1, patience))
    : finished === null
      ? null
      : happened(finished + Math.max(1, Math.round(held)) + (dries ? dryingDays(ordered) * 1440 : 0));
  const method = random.weighted([0.55, 0.08, 0.32, 0.05]);
  const flushed = method === 1 || method === 2;
  const contactF = 134 + 5 * random.normal();
  const standOffFeet = 0.3 + 0.7 * random.uniform();
  const done = finished !== null;
  return {
    number: '',
    inspection,
    reason: reasonOf(random, inspection),
    ordered,
    started,
    finished,
    released,
    ending: released === null ? null : leaves ? 'left unwashed' : 'released',
    method: ['hot spray', 'flush', 'spray and flush', 'hand removal'][method]!,
    unit: station.unit,
    contactF: done && !random.chance(0.12) ? Math.round(contactF * 10) / 10 : null,
    nozzleF: done && !random.chance(0.2) ? Math.round((contactF + 27 * standOffFeet) * 10) / 10 : null,
    standOffFeet: done && !random.chance(0.25) ? Math.round(standOffFeet * 100) / 100 : null,
    contactSeconds: done && !random.chance(0.15) ? 5 + random.below(26) : null,
    flushMinutes: done && flushed && !random.chance(0.1) ? Math.round((3.5 + random.exponential(3)) * 10) / 10 : null,
    flushExitF: done && flushed && !random.chance(0.15) ? Math.round((126 + 8 * random.normal()) * 10) / 10 : null,
    effluent: ['contained', 'reclaimed', 'evaporated', 'other'][random.weighted([0.5, 0.3, 0.17, 0.03])]!,
    recheck: done ? ['passed', 'failed', 'not done'][random.weighted([0.86, 0.04, 0.1])]! : null,
    kept: true,
  };
}
