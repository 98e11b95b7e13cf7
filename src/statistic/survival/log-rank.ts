import { chiSquaredUpper } from '../distribution/chi-squared.js';
import { solveSymmetric } from '../linear.js';
import { checkSameLength } from '../same-length.js';
import { orderByTime } from './observations.js';

/** The log-rank test of equal survival in groups, which are in ascending order. */
export interface LogRank {
  readonly groups: readonly number[];
  readonly observed: readonly number[];
  readonly expected: readonly number[];
  /** Null where nothing ended while more than one group was at risk. */
  readonly chiSquared: number | null;
  /** Groups in which endings were expected, less one. */
  readonly degreesOfFreedom: number;
  readonly p: number | null;
}

/**
 * Whether times that ended (1) or were still open (0) differ between numbered groups. Mantel N (1966) Cancer
 * Chemotherapy Reports 50:163-170; Peto R, Peto J (1972) JRSS A 135:185-207.
 */
export function logRank(times: ArrayLike<number>, ended: ArrayLike<number>, group: ArrayLike<number>): LogRank {
  checkSameLength({ times, endings: ended, groups: group });
  const groups = [...new Set(Array.from(group))].sort((a, b) => a - b);
  const numberOf = new Map(groups.map((code, index) => [code, index]));
  const atRisk = groups.map(() => 0);
  for (let i = 0; i < group.length; i += 1) atRisk[numberOf.get(group[i]!)!]! += 1;
  const observed = groups.map(() => 0);
  const expected = groups.map(() => 0);
  const variance = groups.map(() => groups.map(() => 0));
  const order = orderByTime(times);
  for (let from = 0; from < order.length; ) {
    const time = times[order[from]!]!;
    const leaving = groups.map(() => 0);
    let events = 0;
    for (; from < order.length && times[order[from]!] === time; from += 1) {
      const at = order[from]!;
      const index = numberOf.get(group[at]!)!;
      leaving[index]! += 1;
      if (ended[at] !== 1) continue;
      events += 1;
      observed[index]! += 1;
    }
    if (events > 0) addStep(atRisk, events, expected, variance);
    leaving.forEach((count, index) => {
      atRisk[index]! -= count;
    });
  }
  return { groups, observed, expected, ...test(observed, expected, variance) };
}

/** Adds what one time of endings expects in each group, and its hypergeometric covariance. */
function addStep(atRisk: readonly number[], events: number, expected: number[], variance: number[][]): void {
  const all = atRisk.reduce((sum, count) => sum + count, 0);
  const spread = all > 1 ? (events * (all - events)) / (all - 1) : 0;
  atRisk.forEach((count, i) => {
    const share = count / all;
    expected[i]! += events * share;
    atRisk.forEach((other, j) => {
      variance[i]![j]! += spread * share * ((i === j ? 1 : 0) - other / all);
    });
  });
}

function test(observed: readonly number[], expected: readonly number[], variance: readonly (readonly number[])[]) {
  // A group that nobody was left in when the first time ended says nothing; one more is settled by the others.
  const [, ...compared] = expected.flatMap((count, i) => (count > 0 ? [i] : []));
  const degreesOfFreedom = compared.length;
  const none = { chiSquared: null, degreesOfFreedom, p: null };
  if (degreesOfFreedom === 0) return none;
  const gaps = compared.map((i) => observed[i]! - expected[i]!);
  const weights = solveSymmetric(
    compared.map((i) => compared.map((j) => variance[i]![j]!)),
    gaps,
  );
  if (weights === null) return none;
  const chiSquared = gaps.reduce((sum, gap, i) => sum + gap * weights[i]!, 0);
  return { chiSquared, degreesOfFreedom, p: chiSquaredUpper(chiSquared, degreesOfFreedom) };
}
