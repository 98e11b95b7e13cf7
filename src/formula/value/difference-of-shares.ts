import { once } from '../../finding/book/once.js';
import { newcombeDifference } from '../../statistic/difference/newcombe.js';
import { clusteredProportion, effectiveCounts } from '../../statistic/proportion/clustered.js';
import type { Environment } from '../environment.js';
import type { IntervalFound, NumberValue } from './evaluated.js';
import { withoutInterval } from './interval.js';
import { isDecided, perCluster } from './proportion.js';

const enoughStationDays = 20;

/** A share's cases and trials as independent ones would tell as much, and what they must not have in common with another's. */
interface Side {
  readonly cases: number;
  readonly trials: number;
  readonly table: string;
  /** The station-days of the trials; null where the table's rows belong to none, and `rows` are the trials themselves. */
  readonly stationDays: Uint32Array | null;
  readonly rows: Uint32Array;
  readonly asCounted: boolean;
}

function sideOf({ cases, trials }: NonNullable<NumberValue['shareOf']>, environment: Environment): Side {
  const { clusters, stationDays } = perCluster(cases, trials, environment);
  const { table, rows } = trials.counted!;
  const counted = { cases: cases.value!, trials: trials.value!, table, rows };
  if (clusters === undefined) return { ...counted, stationDays: null, asCounted: false };
  const effective = effectiveCounts(clusteredProportion(clusters));
  // Clusters that happen to agree are no more than independent trials.
  if (effective === null || effective.trials >= counted.trials) {
    return { ...counted, stationDays, asCounted: effective === null };
  }
  return { ...counted, ...effective, stationDays, asCounted: false };
}

function haveAny(one: Uint32Array, other: Uint32Array): boolean {
  const all = new Set(one);
  return other.some((number) => all.has(number));
}

/** Whether two shares have nothing in common that would make them move together. */
function areIndependent(one: Side, other: Side): boolean {
  if (one.stationDays !== null && other.stationDays !== null) return !haveAny(one.stationDays, other.stationDays);
  if (one.stationDays !== null || other.stationDays !== null) return false;
  return one.table !== other.table || !haveAny(one.rows, other.rows);
}

/**
 * The limits of the difference of two shares that have no station-day in common, so that they are independent; null where
 * they have, or where either is no share of counted records. Newcombe RG (1998) Stat Med 17:873-890, method 10, at the
 * effective sizes of the station-days (Korn and Graubard 1998).
 */
export function differenceOfShares(
  left: NumberValue,
  right: NumberValue,
  environment: Environment,
): (() => IntervalFound) | null {
  if (left.shareOf === null || right.shareOf === null || left.value === null || right.value === null) return null;
  if (isDecided(left) || isDecided(right)) return null;
  const [one, other] = [sideOf(left.shareOf, environment), sideOf(right.shareOf, environment)];
  if (!areIndependent(one, other)) return null;
  return once(() => {
    const { interval } = newcombeDifference(one.cases, one.trials, other.cases, other.trials);
    if (interval === null) return withoutInterval('the limits of a share that it is made of are not defined');
    const days = Math.min(...[one, other].map(({ stationDays }) => stationDays?.length ?? enoughStationDays));
    const cautions = [
      ...(days < enoughStationDays ? [`under ${enoughStationDays} station-days`] : []),
      ...(one.asCounted || other.asCounted ? ['the limits take the trials of one share as independent'] : []),
    ];
    const sizes = one.stationDays === null ? '' : ' at the effective sizes of station-days';
    const method = `square-and-add of Wilson scores${sizes} (Newcombe 1998, method 10)`;
    return { interval: { ...interval, method }, why: null, cautions };
  });
}
