import { once } from '../../finding/book/once.js';
import { waitEnding } from '../../record/book.js';
import type { Interval } from '../../statistic/estimate.js';
import { survivalAt } from '../../statistic/survival/at.js';
import { cumulativeIncidence } from '../../statistic/survival/cumulative-incidence.js';
import type { SurvivalCurve } from '../../statistic/survival/curve.js';
import { kaplanMeier } from '../../statistic/survival/kaplan-meier.js';
import { survivalQuantile, weightedSurvivalQuantile } from '../../statistic/survival/quantile.js';
import type { Environment } from '../environment.js';
import { plain, unitOf } from '../unit/unit.js';
import { unitWord } from '../unit/word.js';
import { clusteredTotals, type SelectedRows } from './census.js';
import type { IntervalFound, NumberValue } from './evaluated.js';
import { withoutInterval } from './interval.js';
import { numberFrom } from './number.js';
import { sharedWeights } from './resamples.js';
import { weightedIncidence } from './weighted-incidence.js';

/** Waits in minutes, one a row of rows that all have one, each with how it ended. */
export interface Waits {
  readonly selected: SelectedRows;
  readonly minutes: Float64Array;
  readonly ending: Uint8Array;
}

/** The unit that waits are told in. */
export const minutesUnit = unitOf(unitWord('minutes')!);

/** What a reader must know of waits that did not end as hoped. */
function cautionsOf({ ending }: Waits, asIndependent: boolean): readonly string[] {
  const number = (wanted: number) => ending.reduce((sum, one) => sum + (one === wanted ? 1 : 0), 0);
  const [open, otherwise] = [number(waitEnding.open), number(waitEnding.otherwise)];
  return [
    ...(open > 0 ? [`${open} still open at the cut-off: counted as at least that long`] : []),
    ...(otherwise > 0 ? [`${otherwise} ended otherwise, such as by leaving unwashed`] : []),
    ...(asIndependent ? ['the limits take waits as independent of one another'] : []),
  ];
}

function endedOf({ ending }: Waits): Uint8Array {
  return ending.map((one) => (one === waitEnding.ended ? 1 : 0));
}

/** The time by which a share p of waits has ended, in minutes, from their Kaplan-Meier curve and with its own limits. */
export function waitQuantile(waits: Waits, p: number, environment: Environment): NumberValue {
  const { table, account } = waits.selected;
  const curve = kaplanMeier(waits.minutes, endedOf(waits));
  const { value, interval } = survivalQuantile(curve, p);
  const counts = clusteredTotals(table, account.rows, null, environment);
  const why = account.rows.length === 0 ? 'no row has the wait' : 'too few had ended by the cut-off to reach it';
  return numberFrom(
    {
      ...counts,
      cautions: [...counts.cautions, ...cautionsOf(waits, true)],
      value,
      unit: minutesUnit,
      why: value === null ? why : null,
      standing: 'estimate',
      fewest: curve.events.reduce((sum, events) => sum + events, 0),
      ownInterval: once(() => curveLimits(interval.low === null ? null : interval, curve)),
      draws: counts.draws === null ? null : () => drawWaitQuantiles(waits, p, environment),
      accounts: [account],
    },
    environment,
  );
}

function curveLimits(interval: IntervalFound['interval'], curve: SurvivalCurve): IntervalFound {
  if (interval === null) return withoutInterval('too few had ended to give the limits');
  const unreached = interval.high === null ? ['the upper limit is not reached by the cut-off'] : [];
  return { interval, why: null, cautions: curve.subjects < 20 ? [...unreached, 'under 20 waits'] : unreached };
}

/** Waits sorted by time, and how often each is drawn in a resample: what is drawn again thousands of times. */
interface SortedWaits {
  readonly times: Float64Array;
  readonly hoped: Uint8Array;
  readonly over: Uint8Array;
  /** The same array each time, filled for the resample. */
  readonly weightsIn: (draw: number) => Uint8Array;
}

/** The waits of up to so many minutes, sorted. */
function sortWaits(
  { selected, minutes, ending }: Waits,
  environment: Environment,
  most = Number.POSITIVE_INFINITY,
): SortedWaits {
  const { clusterOf } = selected.table;
  const { rows } = selected.account;
  const order = Uint32Array.from(rows, (_, at) => at)
    .filter((at) => minutes[at]! <= most)
    .sort((a, b) => minutes[a]! - minutes[b]! || a - b);
  const clusters = Uint32Array.from(order, (at) => clusterOf![rows[at]!]!);
  const weights = sharedWeights(environment);
  const own = new Uint8Array(order.length);
  return {
    times: Float64Array.from(order, (at) => minutes[at]!),
    hoped: Uint8Array.from(order, (at) => (ending[at] === waitEnding.ended ? 1 : 0)),
    over: Uint8Array.from(order, (at) => (ending[at] === waitEnding.open ? 0 : 1)),
    weightsIn: (draw) => {
      const start = draw * environment.book.clusters.count;
      for (let at = 0; at < own.length; at += 1) own[at] = weights[start + clusters[at]!]!;
      return own;
    },
  };
}

function drawWaitQuantiles(waits: Waits, p: number, environment: Environment): Float64Array {
  const { times, hoped, weightsIn } = sortWaits(waits, environment);
  return Float64Array.from(
    { length: environment.resamples.count },
    (_, draw) => weightedSurvivalQuantile(times, hoped, weightsIn(draw), p) ?? Number.NaN,
  );
}

function drawShares(waits: Waits, limit: number, totals: Float64Array, environment: Environment): Float64Array {
  const { times, hoped, over, weightsIn } = sortWaits(waits, environment, limit);
  return totals.map((all, draw) => weightedIncidence(times, hoped, over, weightsIn(draw), limit, all));
}

/**
 * The share of waits that had ended as hoped by a time in minutes, as a plain number. Open ones are censored: with
 * nothing else in the way from the Kaplan-Meier curve, and where some ended otherwise by cumulative incidence.
 */
export function shareWithin(waits: Waits, minutes: number, environment: Environment): NumberValue {
  const { table, account } = waits.selected;
  const otherwise = waits.ending.some((one) => one === waitEnding.otherwise);
  const at = survivalAt(kaplanMeier(waits.minutes, endedOf(waits)), minutes);
  const complement = at.value === null ? null : 1 - at.value;
  const value = otherwise ? incidenceAt(waits, minutes) : complement;
  const why = account.rows.length === 0 ? 'no row has the wait' : 'none was followed for so long';
  const limits = at.interval;
  const counts = clusteredTotals(table, account.rows, null, environment);
  const within = waits.minutes.reduce((sum, time, row) => {
    return sum + (time <= minutes && waits.ending[row] === waitEnding.ended ? 1 : 0);
  }, 0);
  return numberFrom(
    {
      ...counts,
      value,
      unit: plain,
      why: value === null ? why : null,
      standing: 'estimate',
      ownInterval: otherwise ? null : () => curveShareLimits(limits),
      draws: counts.draws === null ? null : () => drawShares(waits, minutes, counts.draws!(), environment),
      fewest: within,
      cautions: [...counts.cautions, ...cautionsOf(waits, !otherwise)],
      accounts: [account],
    },
    environment,
  );
}

function curveShareLimits(limits: Interval | null): IntervalFound {
  if (limits?.low == null || limits.high === null) {
    return withoutInterval('all or none had ended by then, so that the curve gives no limits');
  }
  const turned = { ...limits, low: 1 - limits.high, high: 1 - limits.low };
  return { interval: turned, why: null, cautions: [] };
}

function incidenceAt(waits: Waits, minutes: number): number | null {
  const cause = waits.ending.map((one) => (one === waitEnding.ended ? 1 : one === waitEnding.otherwise ? 2 : 0));
  const byCause = cumulativeIncidence(waits.minutes, cause, [minutes]);
  if (byCause.some(({ incidence }) => incidence[0] == null)) return null;
  return byCause.find((one) => one.cause === 1)?.incidence[0] ?? 0;
}
