import type { ShiftBlock } from '../../statistic/allocation/shift-choice.js';
import { raisedTo } from '../../statistic/raised-to.js';
import { type BetaPrior, betaBinomialFit } from '../../statistic/shrinkage/beta-binomial.js';
import type { Traffic } from './day-traffic.js';
import type { ShiftDays } from './shift-days.js';

/** A watch of one weekday at one station, through the season. */
export interface StaffBlock {
  readonly station: number;
  readonly weekday: number;
  readonly watch: number;
  /** How many such days the season had, and the hours of a person for the whole watch on all of them. */
  readonly days: number;
  readonly hours: number;
  /** Staff present, on average. */
  readonly crew: number;
}

/** A season's blocks, with the days that each is made of. */
export interface StaffSeason {
  readonly stations: readonly string[];
  readonly blocks: readonly StaffBlock[];
  /** The days of each station and weekday together: what a resample draws within. */
  readonly strata: readonly (readonly number[])[];
  /** What stations' interception rates are drawn to; null where they spread no more than chance. */
  readonly prior: BetaPrior | null;
}

const daysInWeek = 7;

/** The blocks of some days, by station, weekday and watch. */
export function staffSeason({ watches, days, shift }: ShiftDays, traffic: Traffic): StaffSeason {
  const stations = [...new Set(days.map(({ station }) => station))].sort();
  const placeOf = new Map(stations.map((station, at) => [station, at]));
  const strata = Array.from({ length: stations.length * daysInWeek }, () => [] as number[]);
  days.forEach(({ station, weekday }, day) => {
    strata[placeOf.get(station)! * daysInWeek + weekday]!.push(day);
  });
  const blocks = strata.flatMap((own, stratum) =>
    watches.flatMap((_, watch): StaffBlock[] => {
      const open = own.filter((day) => days[day]!.open[watch]! > 0);
      const hours = open.reduce((sum, day) => sum + days[day]!.open[watch]!, 0);
      if (hours === 0) return [];
      const present = open.reduce((sum, day) => sum + days[day]!.crew * days[day]!.open[watch]!, 0);
      const [station, weekday] = [Math.floor(stratum / daysInWeek), stratum % daysInWeek];
      return [{ station, weekday, watch, days: open.length, hours: open.length * shift, crew: present / hours }];
    }),
  );
  const totals = stationTotals(stations.length, strata, traffic, null);
  return { stations, blocks, strata, prior: betaBinomialFit(totals.cases, totals.full) };
}

/** How often each day counts; null for once each. */
type Weights = Uint8Array | null;

function stationTotals(count: number, strata: StaffSeason['strata'], { days }: Traffic, weights: Weights) {
  const cases = new Array<number>(count).fill(0);
  const full = new Array<number>(count).fill(0);
  strata.forEach((own, stratum) => {
    const station = Math.floor(stratum / daysInWeek);
    for (const day of own) {
      const weight = weights?.[day] ?? 1;
      cases[station]! += weight * days[day]!.intercepted;
      full[station]! += weight * days[day]!.full;
    }
  });
  return { cases, full };
}

/** What one season of a block brings as it is staffed now: full inspections, and the interceptions to be expected of them. */
export interface BlockYield {
  readonly full: number;
  readonly expected: number;
}

/**
 * Full inspections of each block, and those times the station's interception rate drawn to the others: within a station
 * every craft counts alike, since single blocks hold too few interceptions to say otherwise.
 */
export function blockYields(season: StaffSeason, traffic: Traffic, weights: Weights): readonly BlockYield[] {
  const { strata, stations, prior } = season;
  const { cases, full } = stationTotals(stations.length, strata, traffic, weights);
  const [allCases, allFull] = [cases, full].map((counts) => counts.reduce((sum, count) => sum + count, 0));
  const rateOf = (station: number): number => {
    if (allFull === 0) return 0;
    if (prior === null) return allCases! / allFull!;
    return (prior.alpha + cases[station]!) / (prior.alpha + prior.beta + full[station]!);
  };
  return season.blocks.map(({ station, weekday, watch }) => {
    const own = strata[station * daysInWeek + weekday]!;
    const seen = own.reduce((sum, day) => sum + (weights?.[day] ?? 1) * traffic.days[day]!.inWatch[watch]!, 0);
    return { full: seen, expected: seen * rateOf(station) };
  });
}

/**
 * What one, two … people more bring in a block, for each interception to be expected there now: the crew reaches a share of
 * the craft, and every further person reaches the same share of what is still missed. Koopman BO (1957) Operations
 * Research 5:613-626, the exponential detection function.
 */
export function gainFactors(crew: number, reached: number, people: number): readonly number[] {
  const reachedBy = (more: number): number => 1 - raisedTo(1 - reached, (crew + more) / crew);
  return Array.from({ length: people }, (_, one) => (reachedBy(one + 1) - reachedBy(one)) / reached);
}

/** The blocks as shifts to choose from; `factors` are those of each block. */
export function shiftBlocks(
  { blocks }: StaffSeason,
  yields: readonly BlockYield[],
  factors: readonly (readonly number[])[],
): readonly ShiftBlock[] {
  return blocks.map(({ station, hours }, at) => ({
    group: station,
    size: hours,
    gains: factors[at]!.map((factor) => factor * yields[at]!.expected),
  }));
}

/** What people added to some blocks bring together, by what is to be expected there. */
export function gainOf(
  taken: readonly number[],
  factors: readonly (readonly number[])[],
  yields: readonly BlockYield[],
): number {
  let gain = 0;
  for (let block = 0; block < taken.length; block += 1) {
    for (let person = 0; person < taken[block]!; person += 1)
      gain += factors[block]![person]! * yields[block]!.expected;
  }
  return gain;
}
