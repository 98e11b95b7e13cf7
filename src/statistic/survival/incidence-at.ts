import type { Interval } from '../estimate.js';
import { normalZ, twoSided } from '../interval.js';
import { raisedTo } from '../raised-to.js';
import { checkSameLength } from '../same-length.js';
import { orderByTime } from './observations.js';

/** The share that has left for one cause by a time. */
export interface IncidenceAt {
  /** Null past the longest follow-up while some were still open, and without observations. */
  readonly value: number | null;
  readonly standardError: number | null;
  /** Null where the share is 0 or 1, or nothing is known of its spread. */
  readonly interval: Interval | null;
}

/** What happens at each distinct time up to the one asked for. */
interface Step {
  readonly atRisk: number;
  /** Leaving for the cause, and leaving for any, by those at risk. */
  readonly hazard: number;
  readonly anyHazard: number;
  /** The share still open just before, and the share left for the cause just after. */
  readonly openBefore: number;
  readonly reached: number;
}

interface Walk {
  readonly steps: readonly Step[];
  /** The step of each observation, by its place in the order of times; the number of steps for later ones. */
  readonly stepOf: Uint32Array;
  readonly value: number;
  readonly open: number;
}

function walk(
  order: Uint32Array,
  times: ArrayLike<number>,
  causes: ArrayLike<number>,
  cause: number,
  until: number,
): Walk {
  const steps: Step[] = [];
  const stepOf = new Uint32Array(order.length);
  let open = 1;
  let reached = 0;
  let from = 0;
  while (from < order.length && times[order[from]!]! <= until) {
    const time = times[order[from]!]!;
    const atRisk = order.length - from;
    let own = 0;
    let any = 0;
    for (; from < order.length && times[order[from]!] === time; from += 1) {
      const code = causes[order[from]!]!;
      if (code === cause) own += 1;
      if (code !== 0) any += 1;
      stepOf[from] = steps.length;
    }
    reached += (open * own) / atRisk;
    steps.push({ atRisk, hazard: own / atRisk, anyHazard: any / atRisk, openBefore: open, reached });
    open *= (atRisk - any) / atRisk;
  }
  stepOf.fill(steps.length, from);
  // Everybody left, and for this cause: the sum of the steps is 1 but for its rounding.
  const isEvery = open === 0 && steps.every(({ hazard, anyHazard }) => hazard === anyHazard);
  return { steps, stepOf, value: isEvery ? 1 : reached, open };
}

/** How much each observation moves the share, in the order of times: the infinitesimal jackknife. */
function influences({ steps, stepOf, value }: Walk, order: Uint32Array, causes: ArrayLike<number>, cause: number) {
  const stayed = steps.map(({ anyHazard, reached }) => (anyHazard === 1 ? 0 : (value - reached) / (1 - anyHazard)));
  let sum = 0;
  const atRisk = steps.map((step, at) => {
    sum += (step.openBefore * step.hazard - stayed[at]! * step.anyHazard) / step.atRisk;
    return sum;
  });
  return Float64Array.from(order, (observation, place) => {
    const at = stepOf[place]!;
    const step = steps[at];
    if (step === undefined) return -(atRisk.at(-1) ?? 0);
    const code = causes[observation]!;
    const own = code === cause ? step.openBefore : 0;
    const any = code === 0 ? 0 : stayed[at]!;
    return (own - any) / step.atRisk - atRisk[at]!;
  });
}

/**
 * The share that has left for one cause (codes 1, 2, …; 0 still open) by a time, other causes competing, with log-log
 * limits. Observations of one cluster, such as a station-day, may hang together: their influences are added before they
 * are squared. Aalen OO, Johansen S (1978) Scand J Statist 5:141-150; standard error by the infinitesimal jackknife,
 * Therneau TM, Grambsch PM (2000) Modeling Survival Data, sections 2.2 and 7.2.
 */
export function incidenceAt(
  times: ArrayLike<number>,
  causes: ArrayLike<number>,
  cause: number,
  at: number,
  clusterOf: ArrayLike<number> | null = null,
  confidence = 0.95,
): IncidenceAt {
  checkSameLength({ times, causes, clusters: clusterOf ?? undefined });
  const order = orderByTime(times);
  const walked = walk(order, times, causes, cause, at);
  const last = order.length === 0 ? Number.NEGATIVE_INFINITY : times[order.at(-1)!]!;
  if (at > last && walked.open > 0) return { value: null, standardError: null, interval: null };
  const { value } = walked;
  const sums = new Map<number, number>();
  influences(walked, order, causes, cause).forEach((influence, place) => {
    const cluster = clusterOf === null ? place : clusterOf[order[place]!]!;
    sums.set(cluster, (sums.get(cluster) ?? 0) + influence);
  });
  const standardError = Math.sqrt([...sums.values()].reduce((sum, influence) => sum + influence * influence, 0));
  if (!(value > 0 && value < 1 && standardError > 0)) return { value, standardError, interval: null };
  const log = Math.log(value);
  const factor = Math.exp((normalZ(confidence) * standardError) / (value * -log));
  const method = `cumulative incidence, log-log${clusterOf === null ? '' : ', clustered'}`;
  return {
    value,
    standardError,
    interval: twoSided(raisedTo(value, factor), raisedTo(value, 1 / factor), confidence, method),
  };
}
