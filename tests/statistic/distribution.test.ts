import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { betaCumulative, betaQuantile } from '../../src/statistic/distribution/beta.js';
import { binomialCumulative, binomialMass, binomialQuantile } from '../../src/statistic/distribution/binomial.js';
import {
  chiSquaredCumulative,
  chiSquaredQuantile,
  chiSquaredUpper,
} from '../../src/statistic/distribution/chi-squared.js';
import { gammaCumulative, gammaQuantile } from '../../src/statistic/distribution/gamma.js';
import { logGamma } from '../../src/statistic/distribution/log-gamma.js';
import { normalCumulative, normalQuantile } from '../../src/statistic/distribution/normal.js';
import { poissonCumulative, poissonMass, poissonQuantile } from '../../src/statistic/distribution/poisson.js';
import { studentCumulative, studentQuantile } from '../../src/statistic/distribution/student.js';

interface Point {
  readonly fn: string;
  readonly args: readonly [number, number, number];
  readonly ref: string;
}

// Values at 40 digits by mpmath, at the exact doubles given as arguments.
const grid: { readonly points: readonly Point[] } = JSON.parse(
  readFileSync(new URL('../reference/distributions.json', import.meta.url), 'utf8'),
);

const functions: Readonly<Record<string, (a: number, b: number, c: number) => number>> = {
  lgamma: logGamma,
  pnorm: normalCumulative,
  qnorm: normalQuantile,
  pbeta: betaCumulative,
  qbeta: betaQuantile,
  qbeta_small: betaQuantile,
  pgamma: gammaCumulative,
  qgamma: gammaQuantile,
  qgamma_small: gammaQuantile,
  pchisq: chiSquaredCumulative,
  pchisq_upper: chiSquaredUpper,
  qchisq: chiSquaredQuantile,
  pbinom: binomialCumulative,
  dbinom: binomialMass,
  qbinom: binomialQuantile,
  ppois: poissonCumulative,
  dpois: poissonMass,
  qpois: poissonQuantile,
  pt: studentCumulative,
  qt: studentQuantile,
};

describe('distributions against 40-digit values', () => {
  it('the grid has all its points', () => expect(grid.points).toHaveLength(2347));

  for (const name of new Set(grid.points.map((point) => point.fn))) {
    it(`${name} agrees within 1e-9 at every point`, () => {
      const evaluate = functions[name];
      if (evaluate === undefined) throw new Error(`nothing is held to ${name}`);
      const wrong = grid.points
        .filter((point) => point.fn === name)
        .map((point) => ({ args: point.args, wanted: Number(point.ref), got: evaluate(...point.args) }))
        .filter(({ wanted, got }) => !(Math.abs(got - wanted) <= 1e-9 * Math.abs(wanted)));
      expect(wrong).toEqual([]);
    });
  }
});
