import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { concentration, groupsHolding } from '../../src/statistic/concentration.js';
import { fisherExact } from '../../src/statistic/contingency/fisher.js';
import { independence } from '../../src/statistic/contingency/independence.js';
import { mantelHaenszel } from '../../src/statistic/contingency/mantel-haenszel.js';
import { raoScott } from '../../src/statistic/contingency/rao-scott.js';
import { captureRecapture } from '../../src/statistic/detection/capture-recapture.js';
import { agreement } from '../../src/statistic/detection/kappa.js';
import { dependentObservers, twoPassRemoval } from '../../src/statistic/detection/two-observers.js';
import { agrestiCaffo } from '../../src/statistic/difference/agresti-caffo.js';
import { miettinenNurminenDifference } from '../../src/statistic/difference/miettinen-nurminen.js';
import { newcombeDifference } from '../../src/statistic/difference/newcombe.js';
import { funnelLimit } from '../../src/statistic/funnel/limits.js';
import { overDispersion } from '../../src/statistic/funnel/over-dispersion.js';
import { pairedDifference } from '../../src/statistic/paired/difference.js';
import { mcNemar } from '../../src/statistic/paired/mcnemar.js';
import { pairedOddsRatio } from '../../src/statistic/paired/odds-ratio.js';
import { poissonRate } from '../../src/statistic/poisson.js';
import { poissonTest } from '../../src/statistic/poisson-test.js';
import { clusteredProportion, logitLimits } from '../../src/statistic/proportion/clustered.js';
import { proportionEstimate } from '../../src/statistic/proportion/estimate.js';
import { exactTest } from '../../src/statistic/proportion/exact-test.js';
import { quantile } from '../../src/statistic/quantile.js';
import { erlangWait } from '../../src/statistic/queue/erlang.js';
import { generalWait } from '../../src/statistic/queue/general.js';
import { costPerEvent } from '../../src/statistic/ratio/cost-per-event.js';
import { fiellerRatio } from '../../src/statistic/ratio/fieller.js';
import { rateRatio } from '../../src/statistic/ratio/rates.js';
import { koopmanRatio, miettinenNurminenRatio } from '../../src/statistic/ratio/score.js';
import { katzRatio, woolfOddsRatio } from '../../src/statistic/ratio/wald.js';
import { betaBinomialFit, shrunkProportion } from '../../src/statistic/shrinkage/beta-binomial.js';
import { jamesStein } from '../../src/statistic/shrinkage/james-stein.js';
import { betaMoments } from '../../src/statistic/shrinkage/moments.js';
import { directRate } from '../../src/statistic/standard/direct.js';
import { standardisedRatio } from '../../src/statistic/standard/indirect.js';
import { summary } from '../../src/statistic/summary.js';
import { kaplanMeier } from '../../src/statistic/survival/kaplan-meier.js';
import { logRank } from '../../src/statistic/survival/log-rank.js';
import { survivalQuantile } from '../../src/statistic/survival/quantile.js';
import { restrictedMean } from '../../src/statistic/survival/restricted-mean.js';
import { cochranArmitage } from '../../src/statistic/trend/cochran-armitage.js';
import { logisticTrend } from '../../src/statistic/trend/logistic.js';
import { poissonTrend } from '../../src/statistic/trend/poisson.js';

/** Places in a result that hold what must never leave a statistic: NaN, an infinity, undefined. */
function spoilt(result: unknown, place = 'result'): readonly string[] {
  if (result === undefined || (typeof result === 'number' && !Number.isFinite(result))) return [`${place}: ${result}`];
  if (typeof result !== 'object' || result === null) return [];
  return Object.entries(result).flatMap(([key, value]) => spoilt(value, `${place}.${key}`));
}

const few = fc.integer({ min: 0, max: 6 });
const four = fc.tuple(few, few, few, few);
const lists = fc.array(fc.tuple(few, few, fc.integer({ min: 0, max: 3 })), { minLength: 0, maxLength: 7 });
const first = (list: readonly (readonly number[])[]) => list.map(([x = 0]) => x);
const trials = (list: readonly (readonly number[])[]) => list.map(([x = 0, more = 0]) => x + more);
const third = (list: readonly (readonly number[])[]) => list.map(([, , group = 0]) => group);
const filled = (list: readonly (readonly number[])[]) => trials(list).map((n) => n + 1);

/** Each with four small counts, zeroes among them. */
const ofFour: Readonly<Record<string, (a: number, b: number, c: number, d: number) => unknown>> = {
  newcombeDifference: (a, b, c, d) => newcombeDifference(a, a + b, c, c + d),
  miettinenNurminenDifference: (a, b, c, d) => miettinenNurminenDifference(a, a + b, c, c + d),
  agrestiCaffo: (a, b, c, d) => agrestiCaffo(a, a + b, c, c + d),
  katzRatio: (a, b, c, d) => katzRatio(a, a + b, c, c + d),
  woolfOddsRatio: (a, b, c, d) => woolfOddsRatio(a, a + b, c, c + d),
  koopmanRatio: (a, b, c, d) => koopmanRatio(a, a + b, c, c + d),
  miettinenNurminenRatio: (a, b, c, d) => miettinenNurminenRatio(a, a + b, c, c + d),
  rateRatio: (a, b, c, d) => rateRatio(a, b + 0.5, c, d + 0.5),
  fisherExact,
  independence: (a, b, c, d) => [
    independence([
      [a, b],
      [c, d],
    ]),
    independence([
      [a, b, c],
      [d, a, b],
      [c, d, a],
    ]),
  ],
  mantelHaenszel: (a, b, c, d) => {
    const one = { cases1: a, others1: b, cases2: c, others2: d };
    return [mantelHaenszel([one]), mantelHaenszel([one, { ...one, cases1: d, others2: a }]), mantelHaenszel([])];
  },
  pairedDifference: (a, b, c, d) => pairedDifference(a, b, c, d + 1),
  mcNemar: (a, b) => mcNemar(a, b),
  pairedOddsRatio: (a, b) => pairedOddsRatio(a, b),
  poissonRate: (a, b) => poissonRate(a, b),
  poissonTest: (a, b) => poissonTest(a, b + 0.5),
  exactTest: (a, b, c, d) => exactTest(a, a + b, c / (c + d + 1)),
  proportionEstimate: (a, b) => proportionEstimate({ cases: a, trials: a + b }),
  captureRecapture: (a, b, c) => captureRecapture(a + c, b + c, c),
  dependentObservers,
  twoPassRemoval,
  agreement: (a, b, c, d) => [
    agreement([
      [a + 1, b],
      [c, d],
    ]),
    agreement([
      [a, b, c],
      [d, a + 1, b],
      [c, d, a],
    ]),
  ],
  erlangWait: (a, b, c) => erlangWait(a + 1, b + 1, c + 1),
  generalWait: (a, b, c, d) =>
    generalWait({ arrivalMean: a + 1, arrivalDeviation: b, serviceMean: c + 1, serviceDeviation: d, servers: 2 }),
  costPerEvent: (a, b) => costPerEvent(a, b),
  funnelLimit: (a, b, c) => funnelLimit((a + 0.5) / 7, b + 1, (c + 0.5) / 7),
  standardisedRatio: (a, b) => standardisedRatio(a, b + 0.5),
  shrunkProportion: (a, b, c, d) => shrunkProportion(a, a + b, { alpha: c + 0.5, beta: d + 0.5 }),
};

/** Each with none to seven rows of a small count, further trials, and a small number of a group. */
const ofLists: Readonly<Record<string, (rows: readonly (readonly number[])[]) => unknown>> = {
  clusteredProportion: (rows) => {
    const strata = clusteredProportion({ cases: first(rows), trials: trials(rows), strata: third(rows) });
    return [strata, logitLimits(strata), clusteredProportion({ cases: first(rows), trials: trials(rows) })];
  },
  raoScott: (rows) => raoScott(first(rows), trials(rows), third(rows)),
  cochranArmitage: (rows) => cochranArmitage(first(rows), trials(rows), third(rows)),
  logisticTrend: (rows) => logisticTrend(first(rows), trials(rows), third(rows)),
  poissonTrend: (rows) => poissonTrend(first(rows), filled(rows), third(rows)),
  fiellerRatio: (rows) => fiellerRatio(first(rows), third(rows)),
  concentration: (rows) => [concentration(first(rows)), groupsHolding(first(rows), 0.8)],
  overDispersion: (rows) => overDispersion(first(rows), filled(rows), 0.1),
  betaBinomialFit: (rows) => betaBinomialFit(first(rows), trials(rows)),
  betaMoments: (rows) => betaMoments(first(rows), filled(rows)),
  jamesStein: (rows) => jamesStein(first(rows), 6),
  directRate: (rows) => directRate(first(rows), filled(rows), filled(rows)),
  summary: (rows) => summary(first(rows)),
  quantile: (rows) =>
    quantile(
      first(rows).sort((a, b) => a - b),
      0.3,
      8,
    ),
  survival: (rows) => {
    const curve = kaplanMeier(first(rows), third(rows));
    return [
      curve,
      survivalQuantile(curve, 0.5),
      restrictedMean(curve, 4),
      logRank(first(rows), third(rows), third(rows)),
    ];
  },
};

describe('neither NaN nor an infinity nor undefined leaves', () => {
  it.each(Object.entries(ofFour))('%s', (_, evaluate) => {
    fc.assert(
      fc.property(four, (counts) => {
        expect(spoilt(evaluate(...counts))).toEqual([]);
      }),
      { numRuns: 400 },
    );
  });

  it.each(Object.entries(ofLists))('%s', (_, evaluate) => {
    fc.assert(
      fc.property(lists, (rows) => {
        expect(spoilt(evaluate(rows))).toEqual([]);
      }),
      { numRuns: 400 },
    );
  });
});
