import { covers, judge } from './measures.js';
import { smallSeason } from './small-season.js';

/** How often the intervals of one measure held the truth. */
export interface Coverage {
  readonly measure: string;
  readonly intervals: number;
  readonly covered: number;
  /** The mean of the true values, and of the values estimated. */
  readonly meanTruth: number;
  readonly meanValue: number;
}

/** Coverage of every measure over seeded seasons, in the order in which measures are judged. */
export function tally(
  seeds: Iterable<number>,
  scale: number,
  progress: (seed: number) => void = () => {},
): readonly Coverage[] {
  const sums = new Map<string, { intervals: number; covered: number; truth: number; value: number }>();
  for (const seed of seeds) {
    for (const judged of judge(smallSeason(seed, scale))) {
      // Without a single case there is nothing to have a share of.
      if (judged.estimate.value === null) continue;
      const sum = sums.get(judged.measure) ?? { intervals: 0, covered: 0, truth: 0, value: 0 };
      sums.set(judged.measure, sum);
      sum.intervals++;
      if (covers(judged)) sum.covered++;
      sum.truth += judged.truth;
      sum.value += judged.estimate.value;
    }
    progress(seed);
  }
  return [...sums].map(([measure, { intervals, covered, truth, value }]) => ({
    measure,
    intervals,
    covered,
    meanTruth: truth / intervals,
    meanValue: value / intervals,
  }));
}
