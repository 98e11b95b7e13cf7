import type { BookTable } from '../record/book.js';
import { groupRows } from './group-rows.js';

/** What the traffic of a station is told apart by when it is compared: the last fields are joined first. */
export const trafficFields = ['last_status', 'setting', 'month'] as const;

/** Inspections and interceptions of each stratum of traffic, for all stations and for one. */
export interface TrafficStrata {
  /** The number of strata. */
  readonly count: number;
  /** The stratum of each row, by row number. */
  readonly stratumOf: ReadonlyMap<number, number>;
  /** Inspections of all stations. */
  readonly all: readonly number[];
  /** Interceptions by inspections of all stations. */
  readonly rates: readonly number[];
}

/** The strata of traffic among some full inspections, neighbours beside each other. */
export function trafficStrata(table: BookTable, full: Uint32Array, isCase: (row: number) => boolean): TrafficStrata {
  const groups = groupRows(table, full, trafficFields);
  const stratumOf = new Map<number, number>();
  groups.forEach(({ rows }, stratum) => {
    for (const row of rows) stratumOf.set(row, stratum);
  });
  return {
    count: groups.length,
    stratumOf,
    all: groups.map(({ rows }) => rows.length),
    rates: groups.map(({ rows }) => rows.filter(isCase).length / rows.length),
  };
}

/** Cases and trials of one station, stratum by stratum. */
export interface StationTraffic {
  readonly cases: readonly number[];
  readonly trials: readonly number[];
}

/** A station's share of the strata. */
export function stationTraffic(
  { count, stratumOf }: TrafficStrata,
  rows: Uint32Array,
  isCase: (row: number) => boolean,
): StationTraffic {
  const cases = new Array<number>(count).fill(0);
  const trials = new Array<number>(count).fill(0);
  for (const row of rows) {
    const stratum = stratumOf.get(row)!;
    trials[stratum]!++;
    if (isCase(row)) cases[stratum]!++;
  }
  return { cases, trials };
}

/** Fewer inspections of a station in a stratum than this, and the stratum is joined with its neighbour. */
export const enoughInStratum = 10;

/** So is one in which the station has less than this part of what the standard's weight would call for. */
export const leastOfDue = 1 / 5;

/** A station's counts and the standard's weights over strata joined until the station has enough in each. */
export interface JoinedStrata {
  readonly cases: readonly number[];
  readonly trials: readonly number[];
  readonly standard: readonly number[];
}

/** Strata joined in their order: each takes in its next neighbours until it is full; what is left joins the last. */
export function joinStrata({ cases, trials }: StationTraffic, standard: readonly number[]): JoinedStrata {
  const all = standard.reduce((sum, weight) => sum + weight, 0);
  const own = trials.reduce((sum, count) => sum + count, 0);
  const joined: { cases: number; trials: number; standard: number }[] = [];
  let open = { cases: 0, trials: 0, standard: 0 };
  standard.forEach((weight, stratum) => {
    open.cases += cases[stratum]!;
    open.trials += trials[stratum]!;
    open.standard += weight;
    const due = all === 0 ? 0 : (open.standard / all) * own;
    if (open.trials < enoughInStratum || open.trials < leastOfDue * due) return;
    joined.push(open);
    open = { cases: 0, trials: 0, standard: 0 };
  });
  const last = joined.at(-1);
  if (last === undefined) joined.push(open);
  else {
    last.cases += open.cases;
    last.trials += open.trials;
    last.standard += open.standard;
  }
  return {
    cases: joined.map((one) => one.cases),
    trials: joined.map((one) => one.trials),
    standard: joined.map((one) => one.standard),
  };
}
