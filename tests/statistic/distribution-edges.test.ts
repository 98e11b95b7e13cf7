import { describe, expect, test } from 'vitest';
import {
  betaCumulative,
  betaLogOddsDensity,
  betaLogTails,
  betaQuantile,
  betaQuantileShare,
} from '../../src/statistic/distribution/beta.js';
import {
  binomialCumulative,
  binomialMass,
  binomialQuantile,
  binomialUpper,
} from '../../src/statistic/distribution/binomial.js';
import {
  gammaLogTails,
  gammaQuantile,
  gammaUpper,
  gammaUpperQuantile,
} from '../../src/statistic/distribution/gamma.js';
import { logGamma } from '../../src/statistic/distribution/log-gamma.js';
import { increasingRoot } from '../../src/statistic/distribution/newton.js';
import {
  normalCumulative,
  normalQuantile,
  normalTwoSided,
  normalUpperQuantile,
} from '../../src/statistic/distribution/normal.js';
import {
  poissonCumulative,
  poissonMass,
  poissonQuantile,
  poissonUpper,
} from '../../src/statistic/distribution/poisson.js';
import { devianceFrom, logBinomialMass, logPoissonMass } from '../../src/statistic/distribution/saddle-point.js';
import { studentCumulative, studentQuantile, studentUpperQuantile } from '../../src/statistic/distribution/student.js';
import { smallestReaching } from '../../src/statistic/distribution/whole.js';

const near = (found: readonly number[], wanted: readonly number[]): void => {
  found.forEach((value, at) => {
    expect(Math.abs(value - wanted[at]!)).toBeLessThanOrEqual(1e-12 * Math.abs(wanted[at]!));
  });
};

// Values are those of R 4.2.2 (dbinom, pbinom, qbinom, dpois …), or follow from what a distribution is.

describe('counts at the ends of what they can be', () => {
  test('of trials', () => {
    expect([binomialMass(0, 5, 0), binomialMass(1, 5, 0), binomialMass(5, 5, 1), binomialMass(4, 5, 1)]).toEqual([
      1, 0, 1, 0,
    ]);
    expect([-1, 6, 2.5, Number.NaN].map((k) => binomialMass(k, 5, 0.3))).toEqual([0, 0, 0, 0]);
    expect([-1, -0.5, 5, 6].map((k) => binomialCumulative(k, 5, 0.3))).toEqual([0, 0, 1, 1]);
    expect([-1, -0.5, 5, 6].map((k) => binomialUpper(k, 5, 0.3))).toEqual([1, 1, 0, 0]);
    near([binomialMass(0, 5, 0.3), binomialMass(5, 5, 0.3), binomialMass(0, 5, 0.9)], [0.16807, 0.00243, 1e-5]);
    near([binomialCumulative(2.7, 5, 0.3), binomialUpper(2.7, 5, 0.3)], [0.83692, 0.16308]);
    near([binomialCumulative(0, 5, 0.3), binomialUpper(0, 5, 0.3)], [0.16807, 0.83193]);
    expect([0, 1, 0.5, 0.83692, 0.8369201].map((chance) => binomialQuantile(chance, 5, 0.3))).toEqual([0, 5, 1, 2, 3]);
  });

  test('of events', () => {
    expect([poissonMass(0, 0), poissonMass(1, 0), poissonMass(-1, 2), poissonMass(1.5, 2)]).toEqual([1, 0, 0, 0]);
    near([poissonMass(0, 2), poissonMass(3, 2.5)], [Math.exp(-2), 0.213763017249736]);
    expect([poissonCumulative(-1, 2), poissonUpper(-1, 2)]).toEqual([0, 1]);
    near(
      [poissonCumulative(2.7, 2), poissonUpper(3, 2), poissonUpper(0, 2)],
      [0.676676416183063, 0.142876539501453, -Math.expm1(-2)],
    );
    expect([0, 0.5].map((chance) => poissonQuantile(chance, 2))).toEqual([0, 2]);
    expect(() => poissonQuantile(1, 2)).toThrow(RangeError);
  });

  test('of which the smallest that reaches a chance is sought from anywhere', () => {
    const reached = (start: number, largest = 100) => smallestReaching(0.42, start, largest, (whole) => whole / 100);
    expect([-5, 0, 3.9, 41, 42, 43, 99, 100, 1e9].map((start) => reached(start))).toEqual(Array(9).fill(42));
    expect(reached(3, 17)).toBe(17);
    // A shortfall of one part in 1e13 is rounding.
    expect(smallestReaching(0.42, 0, 100, (whole) => (whole / 100) * (1 - 5e-14))).toBe(42);
    expect(smallestReaching(0.42, 0, 100, (whole) => (whole / 100) * (1 - 5e-13))).toBe(43);
  });
});

describe('shapes that are continuous, at their ends', () => {
  test('of gamma', () => {
    const none = { below: Number.NEGATIVE_INFINITY, above: 0 };
    expect([gammaLogTails(0, 2), gammaLogTails(-1, 2)]).toEqual([none, none]);
    expect(gammaLogTails(Number.POSITIVE_INFINITY, 2)).toEqual({ below: 0, above: Number.NEGATIVE_INFINITY });
    expect([gammaQuantile(0, 2), gammaUpperQuantile(1, 2)]).toEqual([0, 0]);
    near(
      [gammaUpper(30, 2), gammaQuantile(0.7, 0.4), gammaUpperQuantile(0.3, 0.4), gammaQuantile(1e-8, 0.4)],
      [2.90086312034045e-12, 0.397257161700378, 0.397257161700378, 7.41535468256393e-21],
    );
    expect(() => gammaUpperQuantile(0, 2)).toThrow(RangeError);
    expect(() => gammaQuantile(1, 2)).toThrow(RangeError);
    for (const shape of [0, -1, Number.NaN]) expect(() => gammaLogTails(1, shape)).toThrow(RangeError);
    for (const x of [0, -1, Number.NaN]) expect(() => logGamma(x)).toThrow(RangeError);
  });

  test('of beta', () => {
    expect([betaCumulative(0, 2, 3), betaCumulative(1, 2, 3), betaCumulative(-1, 2, 3)]).toEqual([0, 1, 0]);
    expect([betaQuantile(0, 2, 3), betaQuantile(1, 2, 3)]).toEqual([0, 1]);
    expect(betaQuantileShare(1, 2, 3)).toEqual({ share: 1, rest: 0 });
    near([betaCumulative(0.2, 2, 3), betaQuantile(0.5, 0.3, 4)], [0.1808, 0.0197783145650494]);
    // dbeta(.2, 2, 3) is 1.536; on the scale of log odds it is times x (1 − x).
    near([betaLogOddsDensity(0.2, 0.8, 2, 3)], [1.536 * 0.2 * 0.8]);
    for (const [a, b] of [
      [0, 1],
      [1, 0],
      [-1, 1],
      [1, Number.NaN],
    ] as const) {
      expect(() => betaLogTails(0.5, 0.5, a, b)).toThrow(RangeError);
    }
  });

  test('of the normal, symmetric about 0 and exact in either tail', () => {
    near([-0.5, 0.5, 3].map(normalCumulative), [0.308537538725987, 0.691462461274013, 0.99865010196837]);
    near([normalCumulative(-12), normalCumulative(-1)], [1.77648211207768e-33, 0.158655253931457]);
    expect(normalCumulative(0)).toBe(0.5);
    near(
      [0.6, 0.3, 0.9, 1e-30].map(normalQuantile),
      [0.2533471031358, -0.524400512708041, 1.2815515655446, -11.4640246884436],
    );
    near([normalUpperQuantile(0.7), normalUpperQuantile(0.3)], [-0.524400512708041, 0.524400512708041]);
    expect(normalQuantile(0.5)).toBeCloseTo(0, 15);
    expect([normalTwoSided(0), normalTwoSided(-1) === normalTwoSided(1)]).toEqual([1, true]);
    for (const chance of [0, 1, Number.NaN]) expect(() => normalUpperQuantile(chance)).toThrow(RangeError);
  });

  test('of Student', () => {
    near([studentCumulative(-2.3, 4), studentCumulative(2.3, 4)], [0.0414695185561912, 0.958530481443809]);
    expect(studentCumulative(0, 4)).toBe(0.5);
    near(
      [studentQuantile(0.1, 4), studentQuantile(0.9, 4), studentQuantile(0.975, 1)],
      [-1.53320627405894, 1.53320627405894, 12.7062047361747],
    );
    expect(studentUpperQuantile(0.9, 4)).toBeCloseTo(-1.53320627405894, 12);
    for (const chance of [0, 1]) expect(() => studentUpperQuantile(chance, 4)).toThrow(RangeError);
  });
});

describe('the parts that distributions are made of', () => {
  test('masses of counts that are none, or all', () => {
    near([logBinomialMass(0, 7, 0.2, 0.8), logBinomialMass(0, 7, 0.8, 0.2)], [7 * Math.log(0.8), 7 * Math.log(0.2)]);
    near([logBinomialMass(7, 0, 0.2, 0.8), logBinomialMass(7, 0, 0.8, 0.2)], [7 * Math.log(0.2), 7 * Math.log(0.8)]);
    // A chance too small to be told from 0 in its complement: −7 × 1e-20, and 1e-20 of none.
    near([logBinomialMass(0, 7, 1e-20, 1), logBinomialMass(7, 0, 1, 1e-20)], [-7e-20, -7e-20]);
    expect(logPoissonMass(0, 3)).toBe(-3);
  });

  test('the deviance is 0 at the mean, and its two ways agree where they meet', () => {
    expect([devianceFrom(5, 5), devianceFrom(0, 3)]).toEqual([0, 3]);
    for (const x of [0.4, 2, 50, 1e6]) {
      // The ways meet where |x − mean| is a tenth of x + mean: at a mean of x × 9/11 or x × 11/9.
      for (const mean of [0.999, 1.001].flatMap((by) => [(x * by * 9) / 11, (x * by * 11) / 9])) {
        const plainly = x * Math.log(x / mean) + mean - x;
        expect(Math.abs(devianceFrom(x, mean) / plainly - 1)).toBeLessThan(1e-12);
      }
    }
  });

  test('a root is found from far away, in either direction, and a function without one is told', () => {
    const cubic = (at: number) => ({ value: (at - 3) ** 3 + at - 3, slope: 3 * (at - 3) ** 2 + 1 });
    for (const start of [-500, 0, 3, 700]) expect(increasingRoot(cubic, start)).toBeCloseTo(3, 9);
    // A slope that says nothing: halving and doubling alone.
    const flat = (at: number) => ({ value: Math.sign(at - 0.1), slope: 0 });
    for (const start of [-20, 40]) expect(increasingRoot(flat, start)).toBeCloseTo(0.1, 9);
    expect(() => increasingRoot(() => ({ value: 1, slope: 0 }), 0)).toThrow('no root');
  });
});
