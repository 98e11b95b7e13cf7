import { studentUpperQuantile } from '../distribution/student.js';
import type { Interval } from '../estimate.js';
import { tailBeyond, twoSided } from '../interval.js';
import { checkSameLength } from '../same-length.js';
import { clopperPearson } from './clopper-pearson.js';

/** Counts of each cluster, entry by entry; a cluster without trials takes no part. */
export interface Clusters {
  readonly cases: ArrayLike<number>;
  readonly trials: ArrayLike<number>;
  /** The stratum of each cluster, by number; one stratum where absent. */
  readonly strata?: ArrayLike<number>;
}

/** A proportion from clusters with all that its interval stands on. */
export interface ClusteredProportion {
  /** Cases by trials; null without trials. */
  readonly proportion: number | null;
  readonly cases: number;
  readonly trials: number;
  /** Clusters with trials. */
  readonly clusters: number;
  /** Clusters less strata, at least 1; null under two clusters. */
  readonly degreesOfFreedom: number | null;
  /** By linearisation of the ratio; null under two clusters. */
  readonly standardError: number | null;
  /** Variance by that of a simple random sample of as many trials; null where either is not defined. */
  readonly designEffect: number | null;
  /** Trials by design effect, not adjusted and not cut at the trials; null where the design effect is. */
  readonly effectiveTrials: number | null;
  /** Intraclass correlation by analysis of variance; null where it is not defined. */
  readonly intraclassCorrelation: number | null;
  /**
   * Korn-Graubard limits, adjusted for few clusters, with at most as many effective trials as trials; null without one.
   */
  readonly interval: Interval | null;
}

interface Totals {
  readonly cases: number;
  readonly trials: number;
  readonly clusters: number;
  readonly squares: number;
}

function totals({ cases, trials, strata }: Clusters): Totals {
  checkSameLength({ cases, trials, strata });
  const sum = { cases: 0, trials: 0, clusters: 0, squares: 0 };
  for (let i = 0; i < trials.length; i += 1) {
    const n = trials[i]!;
    const x = cases[i]!;
    if (!(x >= 0 && x <= n)) throw new RangeError(`${x} cases of ${n} trials in cluster ${i}`);
    if (n === 0) continue;
    sum.cases += x;
    sum.trials += n;
    sum.clusters += 1;
    sum.squares += n * n;
  }
  return sum;
}

/**
 * The variance of the ratio cases / trials by linearisation with clusters as first-stage units; a stratum of a single
 * cluster is measured from the overall ratio instead of its own mean. Cochran WG (1977) Sampling Techniques, eq. 11.13.
 */
function linearised(clusters: Clusters, { cases, trials }: Totals): { variance: number; strata: number } {
  const ratio = cases / trials;
  const strata = new Map<number, { clusters: number; sum: number; squares: number }>();
  for (let i = 0; i < clusters.trials.length; i += 1) {
    const n = clusters.trials[i]!;
    if (n === 0) continue;
    const residual = clusters.cases[i]! - ratio * n;
    const stratum = clusters.strata?.[i] ?? 0;
    const known = strata.get(stratum);
    const seen = known ?? { clusters: 0, sum: 0, squares: 0 };
    if (known === undefined) strata.set(stratum, seen);
    seen.clusters += 1;
    seen.sum += residual;
    seen.squares += residual * residual;
  }
  let total = 0;
  for (const { clusters: m, sum, squares } of strata.values()) {
    total += m === 1 ? squares : (m / (m - 1)) * Math.max(0, squares - (sum * sum) / m);
  }
  return { variance: total / (trials * trials), strata: strata.size };
}

/**
 * Intraclass correlation of a yes-no outcome by analysis of variance; Ridout MS et al. (1999) Biometrics 55:137-148.
 */
function intraclass(clusters: Clusters, { cases, trials, clusters: m, squares }: Totals): number | null {
  if (m < 2 || trials <= m) return null;
  let within = 0;
  for (let i = 0; i < clusters.trials.length; i += 1) {
    const n = clusters.trials[i]!;
    const x = clusters.cases[i]!;
    if (n > 0) within += x - (x * x) / n;
  }
  const between = (cases - within - (cases * cases) / trials) / (m - 1);
  const inside = within / (trials - m);
  const size = (trials - squares / trials) / (m - 1);
  const total = between + (size - 1) * inside;
  return total === 0 ? null : (between - inside) / total;
}

/**
 * The limits of Clopper-Pearson at an effective size: proportion × (1 − proportion) / variance, times the squared ratio
 * of Student's t at all trials less one to that at the degrees of freedom. Korn EL, Graubard BI (1998) Survey
 * Methodology 24:193-201. Cut at the number of trials as in Parker JD et al. (2017) Vital and Health Statistics 2(175),
 * since clusters that happen to agree are no more than independent trials.
 */
export function kornGraubard(
  proportion: number,
  effectiveTrials: number,
  trials: number,
  degreesOfFreedom: number,
  confidence = 0.95,
): Interval {
  const tail = tailBeyond(confidence);
  const fewer = studentUpperQuantile(tail, trials - 1) / studentUpperQuantile(tail, degreesOfFreedom);
  const size = Math.min(trials, effectiveTrials * fewer * fewer);
  const exact = clopperPearson(Math.min(size, proportion * size), size, confidence);
  return { ...exact, method: 'Clopper-Pearson at the effective sample size of clusters (Korn-Graubard)' };
}

/** A proportion from whole clusters, such as station-days, with its design effect and Korn-Graubard limits. */
export function clusteredProportion(clusters: Clusters, confidence = 0.95): ClusteredProportion {
  const sum = totals(clusters);
  const { cases, trials } = sum;
  const proportion = trials === 0 ? null : cases / trials;
  const none = { proportion, cases, trials, clusters: sum.clusters, intraclassCorrelation: intraclass(clusters, sum) };
  if (proportion === null || sum.clusters < 2 || trials < 2) {
    const nothing = { degreesOfFreedom: null, standardError: null, designEffect: null, effectiveTrials: null };
    return { ...none, ...nothing, interval: null };
  }
  const { variance, strata } = linearised(clusters, sum);
  const simple = (proportion * (1 - proportion)) / trials;
  const degreesOfFreedom = Math.max(1, sum.clusters - strata);
  const designEffect = simple > 0 ? variance / simple : null;
  const size = variance > 0 ? (proportion * (1 - proportion)) / variance : trials;
  return {
    ...none,
    degreesOfFreedom,
    standardError: Math.sqrt(variance),
    designEffect,
    effectiveTrials: designEffect === null || designEffect === 0 ? null : size,
    interval: kornGraubard(proportion, size, trials, degreesOfFreedom, confidence),
  };
}

/**
 * Cases and trials of as many independent trials as tell as much, not adjusted for few clusters; null where not
 * defined.
 */
export function effectiveCounts(
  estimate: ClusteredProportion,
): { readonly cases: number; readonly trials: number } | null {
  const { proportion, effectiveTrials } = estimate;
  if (proportion === null || effectiveTrials === null) return null;
  return { cases: proportion * effectiveTrials, trials: effectiveTrials };
}

/**
 * Limits on the log-odds scale with Student's t, as proportions; null where the proportion is 0 or 1 or has no error.
 */
export function logitLimits(estimate: ClusteredProportion, confidence = 0.95): Interval | null {
  const { proportion: p, standardError, degreesOfFreedom } = estimate;
  if (p === null || standardError === null || degreesOfFreedom === null || p === 0 || p === 1) return null;
  const half = (studentUpperQuantile(tailBeyond(confidence), degreesOfFreedom) * standardError) / (p * (1 - p));
  const middle = Math.log(p / (1 - p));
  const share = (logit: number) => 1 / (1 + Math.exp(-logit));
  return twoSided(share(middle - half), share(middle + half), confidence, 'log odds with Student t, linearised');
}
