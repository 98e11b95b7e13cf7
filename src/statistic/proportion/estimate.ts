import type { Estimate, Interval } from '../estimate.js';
import { clopperPearson } from './clopper-pearson.js';
import { type Clusters, clusteredProportion } from './clustered.js';
import { checkCounts } from './counts.js';
import { everyLower, zeroUpper } from './zero-cases.js';

/** Cases of trials and, where trials came in clusters such as station-days, the counts of each cluster. */
export interface CountedProportion {
  readonly cases: number;
  readonly trials: number;
  readonly clusters?: Clusters;
}

/** Fewer clusters with trials than this and the clustered limits are too narrow more often than they say. */
const ENOUGH_CLUSTERS = 20;

/**
 * A proportion with the interval that fits what is known. No trials: no value. No case, or no trial that is not one: a
 * one-sided limit as if trials were independent. Clusters: Korn-Graubard, with a caution under 20; a single cluster
 * gives the plain exact interval and says so. Otherwise Clopper-Pearson. Throws when clusters do not add up to the
 * total.
 */
export function proportionEstimate(counted: CountedProportion, confidence = 0.95): Estimate {
  const { cases, trials, clusters } = counted;
  checkCounts(cases, trials);
  const counts = { numerator: cases, denominator: trials };
  if (trials === 0) return { ...counts, value: null, interval: null, why: 'nothing was counted', cautions: [] };
  const { interval, cautions } =
    clusters === undefined ? plain(counted, confidence) : grouped(counted, clusters, confidence);
  return { ...counts, value: cases / trials, interval, why: null, cautions };
}

interface Limits {
  readonly interval: Interval;
  readonly cautions: readonly string[];
}

function plain({ cases, trials }: CountedProportion, confidence: number): Limits {
  if (cases === 0) return { interval: zeroUpper(trials, confidence).interval, cautions: [] };
  if (cases === trials) return { interval: everyLower(trials, confidence), cautions: [] };
  return { interval: clopperPearson(cases, trials, confidence), cautions: [] };
}

function grouped(counted: CountedProportion, clusters: Clusters, confidence: number): Limits {
  const estimate = clusteredProportion(clusters, confidence);
  if (estimate.cases !== counted.cases || estimate.trials !== counted.trials) {
    const given = `${counted.cases} of ${counted.trials}`;
    throw new RangeError(`clusters add up to ${estimate.cases} of ${estimate.trials}, not to ${given}`);
  }
  if (estimate.clusters === 1) {
    return { ...plain(counted, confidence), cautions: ['one cluster only: the limits take trials as independent'] };
  }
  const few = estimate.clusters < ENOUGH_CLUSTERS ? [`under ${ENOUGH_CLUSTERS} clusters`] : [];
  const oneSided = counted.cases === 0 || counted.cases === counted.trials;
  if (oneSided || estimate.interval === null) {
    return { ...plain(counted, confidence), cautions: [...few, 'the limit takes trials as independent'] };
  }
  return { interval: estimate.interval, cautions: few };
}
