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
  logOfRest,
} from '../../src/statistic/distribution/gamma.js';
import { logGamma, stirlingSeries } from '../../src/statistic/distribution/log-gamma.js';
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
    // All 50, although fewer are as good as certain; qbinom(1, 50, .1) gives 50.
    expect(binomialQuantile(1, 50, 0.1)).toBe(50);
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

  test('of gamma, to the last digits, and where the search has far to go', () => {
    // mpmath 1.3 with 40 digits, at the doubles given; the last is (p Γ(s + 1))^(1/s), below what a number holds.
    const held: readonly (readonly [number, number])[] = [
      [gammaUpperQuantile(0.025, 41), 54.46864696398408],
      [gammaUpperQuantile(0.025, 72), 89.55683910710061],
      [gammaUpperQuantile(0.025, 298), 332.77119358528427],
      [gammaUpperQuantile(1e-250, 2), 582.0144852806608],
      [gammaUpperQuantile(2e-307, 0.5), 702.3501847335078],
      [gammaUpperQuantile(1e-30, 300), 544.119565162034],
      [gammaQuantile(0.025, 40), 28.57658644178896],
      [gammaQuantile(0.025, 300), 267.00927523296633],
      [normalQuantile(2e-307), -37.460847032433605],
    ];
    for (const [found, wanted] of held) expect(Math.abs(found / wanted - 1)).toBeLessThan(2e-15);
    near([gammaQuantile(0.02, 0.01)], [7.175838109857903e-171]);
    expect(gammaQuantile(8.3e-76, 4.3e-5)).toBe(0);
  });

  test('of beta, to the last digits', () => {
    // Sums of binomial chances with 40 digits by mpmath 1.3, for shapes that are whole.
    const held: readonly (readonly [number, number])[] = [
      [betaQuantile(0.025, 500, 4500), 0.09183832599533683],
      [betaQuantile(0.025, 60, 140), 0.23863072762173496],
      [betaQuantile(0.0035, 12, 900), 0.005198402741361252],
      [betaQuantile(0.025, 12, 9), 0.36054258730748967],
    ];
    for (const [found, wanted] of held) expect(Math.abs(found / wanted - 1)).toBeLessThan(2e-15);
  });

  test('of beta', () => {
    expect([betaCumulative(0, 2, 3), betaCumulative(1, 2, 3), betaCumulative(-1, 2, 3)]).toEqual([0, 1, 0]);
    expect(betaLogTails(1.5, -0.5, 2, 3)).toEqual({ below: 0, above: Number.NEGATIVE_INFINITY });
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
    for (const chance of [0, 1, Number.NaN]) {
      expect(() => normalUpperQuantile(chance)).toThrow(RangeError);
      expect(() => normalUpperQuantile(chance)).toThrow('no normal quantile');
    }
    // The density at 0 is 1 / √(2π), and changes by nothing that a number of this size holds.
    near(
      [normalQuantile(0.5 + 2 ** -40), normalQuantile(0.5 - 2 ** -40)],
      [1, -1].map((by) => (by * Math.sqrt(2 * Math.PI)) / 2 ** 40),
    );
  });

  test('of Student', () => {
    near([studentCumulative(-2.3, 4), studentCumulative(2.3, 4)], [0.0414695185561912, 0.958530481443809]);
    expect(studentCumulative(0, 4)).toBe(0.5);
    near(
      [studentQuantile(0.1, 4), studentQuantile(0.9, 4), studentQuantile(0.975, 1)],
      [-1.53320627405894, 1.53320627405894, 12.7062047361747],
    );
    expect(studentUpperQuantile(0.9, 4)).toBeCloseTo(-1.53320627405894, 12);
    for (const chance of [0, 1]) {
      expect(() => studentUpperQuantile(chance, 4)).toThrow(RangeError);
      expect(() => studentUpperQuantile(chance, 4)).toThrow('no Student quantile');
    }
  });
});

describe('the parts that distributions are made of', () => {
  test('masses of counts that are none, or all', () => {
    near([logBinomialMass(0, 7, 0.2, 0.8), logBinomialMass(0, 7, 0.8, 0.2)], [7 * Math.log(0.8), 7 * Math.log(0.2)]);
    near([logBinomialMass(7, 0, 0.2, 0.8), logBinomialMass(7, 0, 0.8, 0.2)], [7 * Math.log(0.2), 7 * Math.log(0.8)]);
    // A chance too small to be told from 0 in its complement: −7 × 1e-20, and 1e-20 of none.
    near([logBinomialMass(0, 7, 1e-20, 1), logBinomialMass(7, 0, 1, 1e-20)], [-7e-20, -7e-20]);
    near([logBinomialMass(0, 7, 1, 1e-20), logBinomialMass(7, 0, 1e-20, 1)], Array(2).fill(-140 * Math.LN10));
    expect(logPoissonMass(0, 3)).toBe(-3);
  });

  test('the rest of a chance keeps its digits, whether the chance is nearly all or nearly none', () => {
    // 1 − exp(−1e-20) is 1e-20, and log(1 − e⁻⁵⁰) is −e⁻⁵⁰, each to more digits than a number holds; e^(−log 2) is ½.
    near([-1e-20, -50, -Math.LN2, -0.5, -2].map(logOfRest), [
      -20 * Math.LN10,
      -Math.exp(-50),
      -Math.LN2,
      Math.log(1 - Math.exp(-0.5)),
      Math.log(1 - Math.exp(-2)),
    ]);
  });

  test('log gamma and what Stirling leaves out, to the last digits', () => {
    // mpmath 1.3 with 40 digits, at the doubles given.
    const wanted: readonly (readonly [number, number])[] = [
      [0.001, 6.907178885383853],
      [0.01, 4.599479878042022],
      [0.3, 1.0957979948180756],
      [0.499, 0.5743309231606863],
      [0.7, 0.2608672465316666],
      [0.999, 0.0005780385328913802],
      [1.001, -0.0005763935982833062],
      [1.4, -0.1196129141723713],
      [1.6, -0.11259176569675577],
      [1.999, -0.0004224618006921073],
      [2.001, 0.000423106734800117],
      [2.4, 0.21685932244884157],
      [2.6, 0.35741186354897986],
      [7.3, 7.147892523022248],
      [14.9, 24.924132002217277],
      [15.1, 25.458999750992664],
    ];
    for (const [x, value] of wanted) expect(Math.abs(logGamma(x) / value - 1)).toBeLessThan(2e-14);
    const left: readonly (readonly [number, number])[] = [
      [15, 0.005554733551962801],
      [17, 0.004901395948434738],
      [20.5, 0.004064718438875479],
      [100, 0.0008333305556349147],
    ];
    for (const [n, value] of left) expect(Math.abs(stirlingSeries(n) / value - 1)).toBeLessThan(2e-15);
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

  test('the deviance keeps its digits next to the mean', () => {
    // mpmath 1.3 with 40 digits.
    const held: readonly (readonly [number, number])[] = [
      [devianceFrom(1e6, 1e6 + 1), 4.999996666669166e-7],
      [devianceFrom(1e6 + 1, 1e6), 4.999998333334166e-7],
      [devianceFrom(40, 41.5), 0.027441075091347553],
      [devianceFrom(41.5, 40), 0.027779884592726914],
    ];
    for (const [found, wanted] of held) expect(Math.abs(found / wanted - 1)).toBeLessThan(2e-15);
  });

  test('a root is found from far away, in either direction, and a function without one is told', () => {
    const cubic = (at: number) => ({ value: (at - 3) ** 3 + at - 3, slope: 3 * (at - 3) ** 2 + 1 });
    for (const start of [-500, 0, 3, 700]) expect(increasingRoot(cubic, start)).toBeCloseTo(3, 9);
    // A slope that says nothing: halving and doubling alone.
    const flat = (at: number) => ({ value: Math.sign(at - 0.1), slope: 0 });
    for (const start of [-20, 40]) expect(increasingRoot(flat, start)).toBeCloseTo(0.1, 9);
    // One that jumps and is nowhere 0.
    const jump = (at: number) => ({ value: at > 0.1 ? 1 : -1, slope: 0 });
    for (const start of [-20, 40]) expect(increasingRoot(jump, start)).toBeCloseTo(0.1, 15);
    expect(() => increasingRoot(() => ({ value: 1, slope: 0 }), 0)).toThrow('no root');
  });

  test('a step that leaves the bracket is halved, and one of over a hundred times the reach is not taken', () => {
    // From 1 the slope leads to 0, and from 0 back to 1, for ever.
    const steep = (at: number) => ({ value: Math.sign(at - 0.1), slope: 1 });
    for (const start of [0, 1]) expect(increasingRoot(steep, start)).toBeCloseTo(0.1, 9);
    const asked = (root: number, start: number): readonly number[] => {
      const points: number[] = [];
      const line = (at: number) => {
        points.push(at);
        return { value: at - root, slope: 1 };
      };
      expect(increasingRoot(line, start)).toBe(root);
      return points;
    };
    expect(asked(-200, -150)).toEqual([-150, -200]);
    expect(asked(-200, -100)).toEqual([-100, -200]);
    // 500, 499 and 497 are more than 100, 200 and 400; 493 is less than 800.
    expect(asked(-200, 300)).toEqual([300, 299, 297, 293, -200]);
  });
});
