import { describe, expect, test } from 'vitest';
import { agrestiCaffo } from '../../src/statistic/difference/agresti-caffo.js';
import { miettinenNurminenDifference } from '../../src/statistic/difference/miettinen-nurminen.js';
import { newcombeDifference } from '../../src/statistic/difference/newcombe.js';
import type { Interval } from '../../src/statistic/estimate.js';
import { pairedDifference } from '../../src/statistic/paired/difference.js';
import { mcNemar } from '../../src/statistic/paired/mcnemar.js';
import { pairedOddsRatio } from '../../src/statistic/paired/odds-ratio.js';
import { costPerEvent } from '../../src/statistic/ratio/cost-per-event.js';
import { fiellerRatio } from '../../src/statistic/ratio/fieller.js';
import { rateRatio } from '../../src/statistic/ratio/rates.js';
import { koopmanRatio, miettinenNurminenRatio } from '../../src/statistic/ratio/score.js';
import { katzRatio } from '../../src/statistic/ratio/wald.js';

type Limit = number | null;
const limits = (interval: Interval | null): readonly [Limit, Limit] => [interval!.low, interval!.high];

function near(found: readonly Limit[], wanted: readonly Limit[], digits = 6): void {
  for (const [at, limit] of wanted.entries()) {
    if (limit === null) expect(found[at]).toBeNull();
    else expect(found[at]).toBeCloseTo(limit, digits);
  }
}

describe('where a group has no cases, or nothing else', () => {
  // Worked in R 4.2.2 by maximising the likelihood at each difference or ratio (optimize) and finding where the score is
  // qnorm(.975) (uniroot): another way than the closed forms here, good to some six digits.
  test.each([
    [
      [0, 10, 3, 12],
      [-0.538685745, 0.071088023],
    ],
    [
      [10, 10, 0, 10],
      [0.663641552, 1],
    ],
    [
      [0, 10, 10, 10],
      [-1, -0.663641552],
    ],
    [
      [10, 10, 8, 12],
      [0.002985221, 0.615109339],
    ],
    [
      [5, 10, 5, 10],
      [-0.410096603, 0.410096603],
    ],
  ] as const)('the score limits of the difference of %j are %j', ([x1, n1, x2, n2], wanted) => {
    near(limits(miettinenNurminenDifference(x1, n1, x2, n2).interval), wanted);
  });

  test.each([
    [
      [0, 10, 3, 12],
      [0, 1.301822657],
      [0, 1.359689624],
    ],
    [
      [3, 12, 0, 10],
      [0.768153785, null],
      [0.735461966, null],
    ],
    [
      [5, 10, 5, 10],
      [0.407415277, 2.454498042],
      [0.398010747, 2.51249497],
    ],
    [
      [10, 10, 8, 12],
      [1.019401407, 2.560019079],
      [1.004082031, 2.598140462],
    ],
  ] as const)(
    'the score limits of the ratio of %j are %j, and with N / (N − 1) %j',
    ([x1, n1, x2, n2], koopman, nurminen) => {
      const found = [koopmanRatio(x1, n1, x2, n2), miettinenNurminenRatio(x1, n1, x2, n2)] as const;
      near(limits(found[0].interval), koopman);
      near(limits(found[1].interval), nurminen);
      expect(found.map(({ interval }) => interval!.method)).toEqual(['Koopman score', 'Miettinen-Nurminen score']);
    },
  );

  test.each([
    [
      [0, 5, 0, 0],
      [0.13103507, 1],
    ],
    [
      [0, 0, 5, 0],
      [-1, -0.13103507],
    ],
    [
      [7, 4, 1, 0],
      [-0.132627959, 0.565076887],
    ],
    [
      [7, 0, 0, 0],
      [-0.354330435, 0.354330435],
    ],
  ] as const)('the score limits of the paired difference of %j are %j', ([a, b, c, d], wanted) => {
    near(limits(pairedDifference(a, b, c, d).tango), wanted);
  });
});

test('Newcombe’s limits of pairs draw phi towards 0 where it is above, and take it for 0 where a margin is empty', () => {
  // Newcombe (1998) Statistics in Medicine 17:2635-2650, method 10, worked in R 4.2.2.
  near(limits(pairedDifference(0, 5, 0, 5).newcombe), [0.11736746745, 0.763406909487], 9);
  near(limits(pairedDifference(8, 3, 1, 6).newcombe), [-0.11595897058, 0.318423572134], 9);
  near(limits(pairedDifference(2, 6, 5, 1).newcombe), [-0.352698917723, 0.468273760394], 9);
});

test('nothing to compare gives nulls, and never half a result', () => {
  const none = { value: null, interval: null };
  for (const compare of [
    newcombeDifference,
    miettinenNurminenDifference,
    agrestiCaffo,
    koopmanRatio,
    miettinenNurminenRatio,
  ]) {
    expect([compare(0, 0, 3, 12), compare(3, 12, 0, 0), compare(0, 0, 0, 0)]).toEqual([none, none, none]);
  }
  for (const compare of [koopmanRatio, miettinenNurminenRatio]) expect(compare(0, 10, 0, 12)).toEqual(none);
  expect(rateRatio(0, 2, 0, 3)).toEqual({ ...none, p: null });
  expect(katzRatio(0, 10, 3, 12)).toEqual({ value: 0, logStandardError: null, interval: null });
  expect(katzRatio(3, 10, 0, 12)).toEqual({ ...none, logStandardError: null });
  expect(mcNemar(0, 0)).toEqual({
    ...{ z: null, chiSquared: null, p: 1, chiSquaredCorrected: null, pCorrected: 1, pExact: 1, pMid: 1 },
  });
  expect(pairedOddsRatio(0, 0)).toMatchObject({ value: null, exact: { low: null, high: null }, wald: null });
  const error = { standardError: null, jackknifeError: null, interval: null };
  expect([fiellerRatio([], []), fiellerRatio([1, 2], [0, 0])]).toEqual([
    { value: null, ...error },
    { value: null, ...error },
  ]);
  expect(fiellerRatio([6], [2])).toEqual({ value: 3, ...error });
  // Two that differ widely: the denominator is not told from 0, and there are no limits, though there is an error.
  expect(fiellerRatio([1, 5], [1, 9])).toMatchObject({ value: 0.6, interval: null });
  expect(fiellerRatio([1, 5], [1, 9]).standardError).not.toBeNull();
});

test('a cost of events that did not happen has a lower limit alone, and one of events that did has no such bound', () => {
  // Garwood’s limits of 0 and of 2 events, qchisq(.975, 2) / 2 = 3.688879454 and qchisq(c(.025, .975), c(4, 6)) / 2.
  const none = costPerEvent(100, 0);
  near([none.value, ...limits(none.interval), none.lowerIfNone], [null, 100 / 3.688879454, null, 100 / 2.995732274]);
  const two = costPerEvent(100, 2);
  near([two.value, ...limits(two.interval), two.lowerIfNone], [50, 100 / 7.224687668, 100 / 0.242209279, null], 4);
  expect(costPerEvent(0, 2).value).toBe(0);
});

test('what cannot be compared throws', () => {
  const impossible = [
    () => pairedDifference(0, 0, 0, 0),
    () => pairedDifference(-1, 2, 2, 2),
    () => pairedDifference(2, 2, 2, -1),
    () => mcNemar(-1, 3),
    () => mcNemar(3, 1.5),
    () => costPerEvent(-1, 2),
    () => costPerEvent(Number.POSITIVE_INFINITY, 2),
    () => fiellerRatio([1, 2], [1]),
    () => rateRatio(1, 0, 1, 2),
    () => rateRatio(1, 2, 1, 0),
    () => koopmanRatio(3, 2, 1, 2),
  ];
  for (const ask of impossible) expect(ask).toThrow(RangeError);
});
