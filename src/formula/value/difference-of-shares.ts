import { newcombeDifference } from '../../statistic/difference/newcombe.js';
import { clusteredProportion, effectiveCounts } from '../../statistic/proportion/clustered.js';
import type { Environment } from '../environment.js';
import type { IntervalFound, NumberValue } from './evaluated.js';
import { withoutInterval } from './interval.js';
import { once } from './once.js';
import { perCluster } from './proportion.js';

const enoughStationDays = 20;

/** A share's cases and trials as independent ones would tell as much, and the station-days they are of. */
interface Side {
  readonly cases: number;
  readonly trials: number;
  readonly stationDays: Uint32Array;
  readonly asCounted: boolean;
}

function sideOf({ cases, trials }: NonNullable<NumberValue['shareOf']>, environment: Environment): Side | null {
  const { clusters, stationDays } = perCluster(cases, trials, environment);
  if (clusters === undefined) return null;
  const counted = { cases: cases.value!, trials: trials.value! };
  const effective = effectiveCounts(clusteredProportion(clusters));
  // Clusters that happen to agree are no more than independent trials.
  if (effective === null || effective.trials >= counted.trials) {
    return { ...counted, stationDays, asCounted: effective === null };
  }
  return { ...effective, stationDays, asCounted: false };
}

function shareAny(one: Uint32Array, other: Uint32Array): boolean {
  const days = new Set(one);
  return other.some((day) => days.has(day));
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
  const [one, other] = [sideOf(left.shareOf, environment), sideOf(right.shareOf, environment)];
  if (one === null || other === null || shareAny(one.stationDays, other.stationDays)) return null;
  return once(() => {
    const { interval } = newcombeDifference(one.cases, one.trials, other.cases, other.trials);
    if (interval === null) return withoutInterval('the limits of a share that it is made of are not defined');
    const few = Math.min(one.stationDays.length, other.stationDays.length) < enoughStationDays;
    const cautions = [
      ...(few ? [`under ${enoughStationDays} station-days`] : []),
      ...(one.asCounted || other.asCounted ? ['the limits take the trials of one share as independent'] : []),
    ];
    const method = 'square-and-add of Wilson scores at the effective sizes of station-days (Newcombe, method 10)';
    return { interval: { ...interval, method }, why: null, cautions };
  });
}
