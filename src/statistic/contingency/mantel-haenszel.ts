import type { Compared } from '../compared.js';
import { chiSquaredUpper } from '../distribution/chi-squared.js';
import { normalZ, twoSided } from '../interval.js';
import { raisedTo } from '../raised-to.js';
import { type LogRatio, logRatio } from '../ratio/wald.js';
import { type BreslowDay, breslowDay } from './breslow-day.js';
import type { Stratum } from './stratum.js';

/** A pooled difference with a standard error; all null without a stratum that has both groups. */
export interface PooledDifference extends Compared {
  readonly standardError: number | null;
}

/** Comparison of two groups across strata. Ratios and tests are null where too few strata have cases to carry them. */
export interface MantelHaenszel {
  readonly oddsRatio: LogRatio;
  readonly riskRatio: LogRatio;
  /** The variance of Greenland & Robins (1985), and that of Sato (1989), which also suits many small strata. */
  readonly difference: PooledDifference;
  readonly differenceSato: PooledDifference;
  readonly chiSquared: number | null;
  readonly p: number | null;
  readonly chiSquaredCorrected: number | null;
  readonly pCorrected: number | null;
  /** Whether odds ratios differ between strata. */
  readonly homogeneity: BreslowDay | null;
  /** Weighted by inverse variance; null where a stratum has an empty cell, since nothing is added to it in silence. */
  readonly woolf: LogRatio;
}

/**
 * Pooled odds ratio, risk ratio and risk difference of two groups, and the test that neither differs. Mantel N,
 * Haenszel W (1959) JNCI 22:719-748; variances: Robins J, Breslow N, Greenland S (1986) Biometrics 42:311-323;
 * Greenland S, Robins JM (1985) Biometrics 41:55-68; Sato T (1989) Biometrics 45:1323-1324.
 */
export function mantelHaenszel(strata: readonly Stratum[], confidence = 0.95): MantelHaenszel {
  const filled = strata.filter((s) => s.cases1 + s.others1 > 0 && s.cases2 + s.others2 > 0);
  const oddsRatio = pooledOddsRatio(filled, confidence);
  return {
    oddsRatio,
    riskRatio: pooledRiskRatio(filled, confidence),
    ...pooledDifferences(filled, confidence),
    ...conditionalTest(filled),
    homogeneity: oddsRatio.value === null ? null : breslowDay(filled, oddsRatio.value),
    woolf: inverseVariance(filled, confidence),
  };
}

/** Totals of a stratum: the two groups, cases, and all. */
function margins({ cases1, others1, cases2, others2 }: Stratum) {
  const [n1, n2] = [cases1 + others1, cases2 + others2];
  return { n1, n2, cases: cases1 + cases2, all: n1 + n2 };
}

function sumOver(strata: readonly Stratum[], term: (stratum: Stratum) => number): number {
  return strata.reduce((sum, stratum) => sum + term(stratum), 0);
}

function pooledOddsRatio(strata: readonly Stratum[], confidence: number): LogRatio {
  const forward = (s: Stratum) => (s.cases1 * s.others2) / margins(s).all;
  const backward = (s: Stratum) => (s.others1 * s.cases2) / margins(s).all;
  const same = (s: Stratum) => (s.cases1 + s.others2) / margins(s).all;
  const cross = (s: Stratum) => (s.others1 + s.cases2) / margins(s).all;
  const [r, q] = [sumOver(strata, forward), sumOver(strata, backward)];
  const variance =
    sumOver(strata, (s) => same(s) * forward(s)) / (2 * r * r) +
    sumOver(strata, (s) => same(s) * backward(s) + cross(s) * forward(s)) / (2 * r * q) +
    sumOver(strata, (s) => cross(s) * backward(s)) / (2 * q * q);
  return logRatio(r / q, Math.sqrt(variance), confidence, 'Mantel-Haenszel, Robins-Breslow-Greenland');
}

function pooledRiskRatio(strata: readonly Stratum[], confidence: number): LogRatio {
  const forward = sumOver(strata, (s) => (s.cases1 * margins(s).n2) / margins(s).all);
  const backward = sumOver(strata, (s) => (s.cases2 * margins(s).n1) / margins(s).all);
  const spread = sumOver(strata, (s) => {
    const { n1, n2, cases, all } = margins(s);
    return (n1 * n2 * cases - s.cases1 * s.cases2 * all) / (all * all);
  });
  const error = Math.sqrt(spread / (forward * backward));
  return logRatio(forward / backward, error, confidence, 'Mantel-Haenszel, Greenland-Robins');
}

function pooledDifferences(strata: readonly Stratum[], confidence: number) {
  const weight = (s: Stratum) => (margins(s).n1 * margins(s).n2) / margins(s).all;
  const gap = (s: Stratum) => s.cases1 / margins(s).n1 - s.cases2 / margins(s).n2;
  const weights = sumOver(strata, weight);
  const nothing: PooledDifference = { value: null, standardError: null, interval: null };
  if (weights === 0) return { difference: nothing, differenceSato: nothing };
  const value = sumOver(strata, (s) => weight(s) * gap(s)) / weights;
  const binomial = sumOver(strata, (s) => {
    const { n1, n2, all } = margins(s);
    return (s.cases1 * s.others1 * raisedTo(n2, 3) + s.cases2 * s.others2 * raisedTo(n1, 3)) / (n1 * n2 * all * all);
  });
  const tilt = sumOver(strata, (s) => {
    const { n1, n2, all } = margins(s);
    return (n1 * n1 * s.cases2 - n2 * n2 * s.cases1 + (n1 * n2 * (n2 - n1)) / 2) / (all * all);
  });
  const base = sumOver(strata, (s) => (s.cases1 * s.others2 + s.cases2 * s.others1) / (2 * margins(s).all));
  const z = normalZ(confidence);
  const difference = (variance: number, author: string): PooledDifference => {
    const standardError = Math.sqrt(Math.max(0, variance)) / weights;
    const half = z * standardError;
    const method = `Mantel-Haenszel difference, ${author}`;
    return { value, standardError, interval: twoSided(value - half, value + half, confidence, method) };
  };
  return {
    difference: difference(binomial, 'Greenland-Robins'),
    differenceSato: difference(value * tilt + base, 'Sato'),
  };
}

function conditionalTest(strata: readonly Stratum[]) {
  const gap = sumOver(strata, (s) => s.cases1 - (margins(s).n1 * margins(s).cases) / margins(s).all);
  const variance = sumOver(strata, (s) => {
    const { n1, n2, cases, all } = margins(s);
    return (n1 * n2 * cases * (all - cases)) / (all * all * (all - 1));
  });
  if (!(variance > 0)) return { chiSquared: null, p: null, chiSquaredCorrected: null, pCorrected: null };
  const chiSquared = (gap * gap) / variance;
  // As in R's mantelhaen.test: a gap under one half is not corrected, since that would make it larger or nothing.
  const corrected = (Math.abs(gap) - (Math.abs(gap) >= 0.5 ? 0.5 : 0)) ** 2 / variance;
  return {
    chiSquared,
    p: chiSquaredUpper(chiSquared, 1),
    chiSquaredCorrected: corrected,
    pCorrected: chiSquaredUpper(corrected, 1),
  };
}

function inverseVariance(strata: readonly Stratum[], confidence: number): LogRatio {
  const weight = (s: Stratum) => 1 / (1 / s.cases1 + 1 / s.others1 + 1 / s.cases2 + 1 / s.others2);
  const logOdds = (s: Stratum) => Math.log((s.cases1 * s.others2) / (s.others1 * s.cases2));
  const weights = sumOver(strata, weight);
  const value = Math.exp(sumOver(strata, (s) => weight(s) * logOdds(s)) / weights);
  return logRatio(value, Math.sqrt(1 / weights), confidence, 'Woolf, inverse variance');
}
