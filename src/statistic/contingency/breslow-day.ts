import { chiSquaredUpper } from '../distribution/chi-squared.js';
import type { Stratum } from './stratum.js';

/** A test that the odds ratio is the same in all strata. */
export interface BreslowDay {
  readonly chiSquared: number;
  /** With Tarone's correction, without which it is not quite a chi-squared variable. */
  readonly chiSquaredTarone: number;
  readonly degreesOfFreedom: number;
  /** Null, as is that with Tarone's correction, with a single stratum. */
  readonly p: number | null;
  readonly pTarone: number | null;
}

/** The cases of the first group that a common odds ratio expects, given the margins; Breslow & Day 1980, eq. 4.30. */
function expectedCases({ cases1, others1, cases2, others2 }: Stratum, oddsRatio: number): number {
  const [n1, n2, cases] = [cases1 + others1, cases2 + others2, cases1 + cases2];
  const a = 1 - oddsRatio;
  const b = n2 - cases + oddsRatio * (n1 + cases);
  const c = -oddsRatio * n1 * cases;
  const root = Math.sqrt(b * b - 4 * a * c);
  // Of the two forms of the root the one that does not subtract nearly equal numbers; the first holds at a ratio of 1, too.
  return b > 0 ? (-2 * c) / (b + root) : (root - b) / (2 * a);
}

/**
 * Breslow NE, Day NE (1980) Statistical Methods in Cancer Research I, section 4.4; Tarone RE (1985) Biometrika
 * 72:91-95. Strata in which the margins leave nothing open add nothing and take no degree of freedom.
 */
export function breslowDay(strata: readonly Stratum[], oddsRatio: number): BreslowDay {
  let chiSquared = 0;
  let gaps = 0;
  let variances = 0;
  let open = 0;
  for (const stratum of strata) {
    const expected = expectedCases(stratum, oddsRatio);
    const [n1, n2] = [stratum.cases1 + stratum.others1, stratum.cases2 + stratum.others2];
    const cases = stratum.cases1 + stratum.cases2;
    const cells = [expected, n1 - expected, cases - expected, n2 - cases + expected];
    if (cells.some((cell) => !(cell > 0))) continue;
    const variance = 1 / cells.reduce((sum, cell) => sum + 1 / cell, 0);
    const gap = stratum.cases1 - expected;
    chiSquared += (gap * gap) / variance;
    gaps += gap;
    variances += variance;
    open += 1;
  }
  const degreesOfFreedom = Math.max(0, open - 1);
  const chiSquaredTarone = variances > 0 ? Math.max(0, chiSquared - (gaps * gaps) / variances) : chiSquared;
  const p = (statistic: number) => (degreesOfFreedom === 0 ? null : chiSquaredUpper(statistic, degreesOfFreedom));
  return { chiSquared, chiSquaredTarone, degreesOfFreedom, p: p(chiSquared), pTarone: p(chiSquaredTarone) };
}
