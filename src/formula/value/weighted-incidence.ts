/**
 * The share that had ended as hoped by a limit, with others ending otherwise and some still open, among waits sorted by
 * time and each standing for a whole number of waits alike: the cumulative incidence, which is one less the Kaplan-Meier
 * curve where none ended otherwise. `all` is how many they stand for together, those after the limit among them, of which
 * nothing else is asked. NaN where nobody was followed for so long. Aalen OO, Johansen S (1978) Scand J Statist
 * 5:141-150.
 */
export function weightedIncidence(
  sortedTimes: Float64Array,
  hoped: Uint8Array,
  over: Uint8Array,
  weights: Uint8Array,
  limit: number,
  all: number,
): number {
  let atRisk = all;
  if (atRisk === 0) return Number.NaN;
  let open = 1;
  let share = 0;
  let at = 0;
  while (at < sortedTimes.length && sortedTimes[at]! <= limit && atRisk > 0) {
    const time = sortedTimes[at]!;
    let [good, ended, leaving] = [0, 0, 0];
    for (; at < sortedTimes.length && sortedTimes[at] === time; at += 1) {
      const weight = weights[at]!;
      leaving += weight;
      if (over[at] === 1) ended += weight;
      if (hoped[at] === 1) good += weight;
    }
    share += (open * good) / atRisk;
    open *= (atRisk - ended) / atRisk;
    atRisk -= leaving;
    if (atRisk === 0 && open > 0 && time < limit) return Number.NaN;
  }
  return share;
}
