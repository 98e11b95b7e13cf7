import { normalZ } from '../interval.js';
import { raisedTo } from '../raised-to.js';
import { checkSameLength } from '../same-length.js';
import type { SurvivalCurve } from './curve.js';
import { type Observations, orderByTime } from './observations.js';

/** Choices for `kaplanMeier`. */
export interface KaplanMeierOptions {
  /** Of the limits at each time; 0.95 where absent. */
  readonly confidence?: number;
  /** How many alike each observation stands for; 1 where absent. Non-negative whole numbers. */
  readonly weights?: ArrayLike<number>;
}

interface Steps {
  readonly times: number[];
  readonly atRisk: number[];
  readonly events: number[];
  readonly censored: number[];
  readonly subjects: number;
  readonly followedTo: number | null;
}

/** Counts by distinct time of ending; what is still open at a time at which others end leaves after them. */
function steps({ times, ended, weights }: Observations): Steps {
  const order = orderByTime(times);
  let subjects = 0;
  for (let i = 0; i < times.length; i += 1) subjects += weights?.[i] ?? 1;
  const found = { times: [] as number[], atRisk: [] as number[], events: [] as number[], censored: [] as number[] };
  let atRisk = subjects;
  let followedTo: number | null = null;
  for (let from = 0; from < order.length; ) {
    const time = times[order[from]!]!;
    let events = 0;
    let censored = 0;
    for (; from < order.length && times[order[from]!] === time; from += 1) {
      const at = order[from]!;
      const weight = weights?.[at] ?? 1;
      if (ended[at] === 1) events += weight;
      else censored += weight;
    }
    if (events + censored === 0) continue;
    followedTo = time;
    if (events > 0) {
      found.times.push(time);
      found.atRisk.push(atRisk);
      found.events.push(events);
      found.censored.push(censored);
    } else if (found.censored.length > 0) {
      found.censored[found.censored.length - 1]! += censored;
    }
    atRisk -= events + censored;
  }
  return { ...found, subjects, followedTo };
}

/**
 * The Kaplan-Meier curve of times that ended (1) or were still open (0) when last seen, with limits on the
 * log-minus-log scale. Times may come in any order. Kaplan EL, Meier P (1958) JASA 53:457-481; limits: Kalbfleisch JD,
 * Prentice RL (1980) The Statistical Analysis of Failure Time Data, p. 15.
 */
export function kaplanMeier(
  times: ArrayLike<number>,
  ended: ArrayLike<number>,
  { confidence = 0.95, weights }: KaplanMeierOptions = {},
): SurvivalCurve {
  checkSameLength({ times, endings: ended, weights });
  const z = normalZ(confidence);
  const counts = steps({ times, ended, weights });
  const survival: number[] = [];
  const standardError: (number | null)[] = [];
  const low: (number | null)[] = [];
  const high: (number | null)[] = [];
  let open = 1;
  let greenwood = 0;
  for (let i = 0; i < counts.times.length; i += 1) {
    const atRisk = counts.atRisk[i]!;
    const events = counts.events[i]!;
    open *= (atRisk - events) / atRisk;
    survival.push(open);
    if (atRisk === events) {
      standardError.push(null);
      low.push(null);
      high.push(null);
      continue;
    }
    greenwood += events / (atRisk * (atRisk - events));
    const spread = (z * Math.sqrt(greenwood)) / Math.log(open);
    standardError.push(open * Math.sqrt(greenwood));
    low.push(raisedTo(open, Math.exp(-spread)));
    high.push(raisedTo(open, Math.exp(spread)));
  }
  return { ...counts, survival, standardError, low, high, confidence };
}
