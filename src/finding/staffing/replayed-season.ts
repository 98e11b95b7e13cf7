import { replayWaits } from '../../statistic/queue/replay.js';
import { type Random, randomFrom } from '../../statistic/random.js';
import type { FindingChoices } from '../finding.js';
import type { WashLine } from './wash-lines.js';

/** A unit fewer, as many as there are, and one more. */
export const changes = [-1, 0, 1] as const;

/** Mean waits over some washes in one replay. */
export interface ReplayedMeans {
  /** One a change in units; null where no unit would be left at one of the stations. */
  readonly means: readonly (number | null)[];
  /** The same with the days drawn again, so that the spread of replays is that of seasons like this one. */
  readonly drawn: readonly (number | null)[];
}

/** Every replay of a season, for each group of washes. */
export type ReplayedSeason = readonly (readonly ReplayedMeans[])[];

/** Replays beyond this change no figure that a reader can see. */
const mostReplays = 400;

/** The washes of a line, each with its group and its day; days are numbered from 0 as they appear. */
interface Places {
  readonly groupAt: Uint32Array;
  readonly dayAt: Uint32Array;
  readonly days: number;
}

function placesOf(rows: Uint32Array, groupOf: (row: number) => number, dayOf: (row: number) => number): Places {
  const numbers = new Map<number, number>();
  const dayAt = new Uint32Array(rows.length);
  for (let at = 0; at < rows.length; at++) {
    const day = dayOf(rows[at]!);
    const number = numbers.get(day) ?? numbers.size;
    numbers.set(day, number);
    dayAt[at] = number;
  }
  return { groupAt: rows.map(groupOf), dayAt, days: numbers.size };
}

/** How often each of some days is drawn, as many times as there are days. */
function dayWeights(days: number, random: Random): Uint32Array {
  const times = new Uint32Array(days);
  for (let draw = 0; draw < days; draw++) times[random.below(days)]!++;
  return times;
}

/** What waits of washes add up to in one replay, by group and change in units. */
interface WaitSums {
  readonly plain: Float64Array;
  readonly drawn: Float64Array;
  /** 1 where no unit would be left at one of the group's stations. */
  readonly none: Uint8Array;
  /** Washes of each group, and the same with the days drawn again. */
  readonly washes: Float64Array;
  readonly weighed: Float64Array;
}

function addWaits(sums: WaitSums, waits: readonly (Float64Array | null)[], places: Places, weights: Uint32Array): void {
  const { groupAt, dayAt } = places;
  for (let at = 0; at < groupAt.length; at++) {
    const group = groupAt[at]!;
    const weight = weights[dayAt[at]!]!;
    sums.washes[group]!++;
    sums.weighed[group]! += weight;
    for (let change = 0; change < changes.length; change++) {
      const own = waits[change]!;
      const place = group * changes.length + change;
      if (own === null) sums.none[place] = 1;
      else {
        sums.plain[place]! += own[at]!;
        sums.drawn[place]! += weight * own[at]!;
      }
    }
  }
}

function meansOf({ plain, drawn, none, washes, weighed }: WaitSums, group: number): ReplayedMeans {
  const mean = (sums: Float64Array, of: number): readonly (number | null)[] =>
    changes.map((_, change) => {
      const place = group * changes.length + change;
      return none[place] === 1 || of === 0 ? null : sums[place]! / of;
    });
  return { means: mean(plain, washes[group]!), drawn: mean(drawn, weighed[group]!) };
}

/**
 * The season's orders replayed many times through one unit fewer, the units there are, and one more, with the same drawn
 * lengths for all three (common random numbers). `groupOf` and `dayOf` are asked with rows of washes.
 */
export function replaySeason(
  lines: readonly WashLine[],
  groups: number,
  groupOf: (row: number) => number,
  dayOf: (row: number) => number,
  { count, seed }: FindingChoices['resamples'],
): ReplayedSeason {
  const random = randomFrom(seed);
  const places = lines.map(({ rows }) => placesOf(rows, groupOf, dayOf));
  return Array.from({ length: Math.min(mostReplays, count) }, () => {
    const sums: WaitSums = {
      plain: new Float64Array(groups * changes.length),
      drawn: new Float64Array(groups * changes.length),
      none: new Uint8Array(groups * changes.length),
      washes: new Float64Array(groups),
      weighed: new Float64Array(groups),
    };
    lines.forEach(({ ordered, units, lengths }, line) => {
      const services = new Float64Array(ordered.length);
      for (let at = 0; at < services.length; at++) services[at] = lengths[random.below(lengths.length)]!;
      const weights = dayWeights(places[line]!.days, random);
      const waits = changes.map((change) =>
        units + change < 1 ? null : replayWaits(ordered, services, units + change),
      );
      addWaits(sums, waits, places[line]!, weights);
    });
    return Array.from({ length: groups }, (_, group) => meansOf(sums, group));
  });
}
