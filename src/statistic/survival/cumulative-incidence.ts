import { checkSameLength } from '../same-length.js';
import { stepAt } from './at.js';
import { orderByTime } from './observations.js';

/** The share that has left for one cause by each of the times asked for. */
export interface CumulativeIncidence {
  readonly cause: number;
  /** One a time asked for; null past the longest follow-up while some were still open. */
  readonly incidence: readonly (number | null)[];
}

/**
 * Cumulative incidence by cause (1, 2, …; 0 still open) at the times asked for. The causes are those given, or else
 * those seen, ascending. One minus Kaplan-Meier would overstate each cause. Aalen OO, Johansen S (1978) Scand J Statist
 * 5:141-150.
 */
export function cumulativeIncidence(
  times: ArrayLike<number>,
  cause: ArrayLike<number>,
  at: readonly number[],
  causes: readonly number[] = causesSeen(cause),
): readonly CumulativeIncidence[] {
  checkSameLength({ times, causes: cause });
  const order = orderByTime(times);
  const stepTimes: number[] = [];
  const reached = new Map(causes.map((code) => [code, [0]]));
  let open = 1;
  let atRisk = order.length;
  for (let from = 0; from < order.length; ) {
    const time = times[order[from]!]!;
    const before = from;
    const leaving = new Map<number, number>();
    for (; from < order.length && times[order[from]!] === time; from += 1) {
      const code = cause[order[from]!]!;
      leaving.set(code, (leaving.get(code) ?? 0) + 1);
    }
    stepTimes.push(time);
    for (const [code, shares] of reached) {
      shares.push(shares.at(-1)! + (open * (leaving.get(code) ?? 0)) / atRisk);
    }
    const stayed = leaving.get(0) ?? 0;
    open *= (atRisk - (from - before - stayed)) / atRisk;
    atRisk -= from - before;
  }
  const last = stepTimes.at(-1) ?? Number.NEGATIVE_INFINITY;
  const known = (time: number) => time <= last || open === 0;
  return causes.map((code) => ({
    cause: code,
    incidence: at.map((time) => (known(time) ? (reached.get(code)?.[stepAt(stepTimes, time) + 1] ?? null) : null)),
  }));
}

function causesSeen(cause: ArrayLike<number>): readonly number[] {
  return [...new Set(Array.from(cause))].filter((code) => code !== 0).sort((a, b) => a - b);
}
