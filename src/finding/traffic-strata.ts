import type { BookTable } from '../record/book.js';
import { type GroupKey, groupRows } from './group-rows.js';

/** What the traffic of a station is told apart by when it is compared: the last fields are joined first. */
export const trafficFields = ['last_status', 'setting', 'month'] as const;

/** Inspections and interceptions of each stratum of traffic, for all stations and for one. */
export interface TrafficStrata {
  /** The number of strata. */
  readonly count: number;
  /** What each stratum lies in: its status and its setting. */
  readonly groups: readonly GroupKey[];
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
    groups: groups.map(({ key }) => key.slice(0, -1)),
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

/** Some strata together: a station's counts in them, and their weight in the standard. */
interface Piece {
  readonly cases: number;
  readonly trials: number;
  readonly standard: number;
}

const together = (one: Piece, other: Piece): Piece => ({
  cases: one.cases + other.cases,
  trials: one.trials + other.trials,
  standard: one.standard + other.standard,
});

/** Pieces of one group joined in their order until each is full; where the whole group is not, it is one piece. */
function joinPieces(pieces: readonly Piece[], isFull: (piece: Piece) => boolean): readonly Piece[] {
  const joined: Piece[] = [];
  let open: Piece | null = null;
  for (const piece of pieces) {
    open = open === null ? piece : together(open, piece);
    if (!isFull(open)) continue;
    joined.push(open);
    open = null;
  }
  if (open !== null) joined.push(open);
  // What is left joins the one before it, until it is full too.
  while (joined.length > 1 && !isFull(joined.at(-1)!)) {
    const last = joined.pop()!;
    joined.push(together(joined.pop()!, last));
  }
  return joined;
}

/**
 * Strata joined until the station has enough in each: neighbours within their group first, whole groups only where one has
 * too few altogether. `groups` are what each stratum lies in, the outermost first; a station that never sees one setting
 * must not lend its weight to another status of water.
 */
export function joinStrata(
  { cases, trials }: StationTraffic,
  standard: readonly number[],
  groups: readonly GroupKey[] = standard.map(() => []),
): JoinedStrata {
  const all = standard.reduce((sum, weight) => sum + weight, 0);
  const own = trials.reduce((sum, count) => sum + count, 0);
  const isFull = (piece: Piece): boolean => {
    const due = all === 0 ? 0 : (piece.standard / all) * own;
    return piece.trials >= enoughInStratum && piece.trials >= leastOfDue * due;
  };
  const within = (strata: readonly number[], level: number): readonly Piece[] => {
    const [first] = strata;
    if (first === undefined) return [];
    if (level === groups[first]!.length) {
      const pieces = strata.map((at) => ({ cases: cases[at]!, trials: trials[at]!, standard: standard[at]! }));
      return joinPieces(pieces, isFull);
    }
    const inner = new Map<GroupKey[number], number[]>();
    for (const at of strata) {
      const key = groups[at]![level]!;
      inner.set(key, [...(inner.get(key) ?? []), at]);
    }
    const pieces = [...inner.values()].flatMap((some) => within(some, level + 1));
    return joinPieces(pieces, isFull);
  };
  const joined = within([...standard.keys()], 0);
  return {
    cases: joined.map((one) => one.cases),
    trials: joined.map((one) => one.trials),
    standard: joined.map((one) => one.standard),
  };
}
