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

/** How often each day of a line is drawn, once for each of its washes. */
function dayWeights(days: readonly number[], random: Random): readonly number[] {
  const distinct = [...new Set(days)];
  const times = new Map<number, number>();
  for (const _ of distinct) {
    const day = distinct[random.below(distinct.length)]!;
    times.set(day, (times.get(day) ?? 0) + 1);
  }
  return days.map((day) => times.get(day) ?? 0);
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
  const days = lines.map(({ rows }) => Array.from(rows, dayOf));
  const places = lines.map(({ rows }) => Array.from(rows, groupOf));
  return Array.from({ length: Math.min(mostReplays, count) }, () => {
    const sums = Array.from({ length: groups }, () => changes.map(() => ({ plain: 0, drawn: 0, none: false })));
    const washes = new Array<number>(groups).fill(0);
    const weighed = new Array<number>(groups).fill(0);
    lines.forEach(({ ordered, units, lengths }, line) => {
      const services = Float64Array.from(ordered, () => lengths[random.below(lengths.length)]!);
      const weights = dayWeights(days[line]!, random);
      const waits = changes.map((change) =>
        units + change < 1 ? null : replayWaits(ordered, services, units + change),
      );
      places[line]!.forEach((group, at) => {
        washes[group]!++;
        weighed[group]! += weights[at]!;
        waits.forEach((own, change) => {
          const sum = sums[group]![change]!;
          if (own === null) sum.none = true;
          else {
            sum.plain += own[at]!;
            sum.drawn += weights[at]! * own[at]!;
          }
        });
      });
    });
    return sums.map((own, group): ReplayedMeans => {
      const mean = (sum: number, of: number, none: boolean): number | null => (none || of === 0 ? null : sum / of);
      return {
        means: own.map(({ plain, none }) => mean(plain, washes[group]!, none)),
        drawn: own.map(({ drawn, none }) => mean(drawn, weighed[group]!, none)),
      };
    });
  });
}
