import { concentration } from '../concentration.js';
import { funnelLimit } from '../funnel/limits.js';
import { overDispersion } from '../funnel/over-dispersion.js';
import { resampledRanks } from '../resample/ranks.js';
import { betaBinomialFit, shrunkProportion } from '../shrinkage/beta-binomial.js';
import { expectedRanks } from '../shrinkage/expected-rank.js';
import { directRate } from '../standard/direct.js';
import { standardisedRatio } from '../standard/indirect.js';
import { cochranArmitage } from '../trend/cochran-armitage.js';
import { endsOf, type StatisticAccount } from './statistic-account.js';

const cases = [0, 18, 8, 46, 8, 13, 9, 31, 14, 8, 29, 24];
const trials = [47, 148, 119, 810, 211, 196, 148, 215, 207, 97, 256, 360];
const hospitals = 'cardiac deaths 0, 18, 8, 46, 8, 13, 9, 31, 14, 8, 29, 24 in twelve hospitals';

/** Stations, parts and seasons beside each other. */
export const stationAccounts: readonly StatisticAccount[] = [
  {
    name: 'Funnel limits',
    gives: 'Where a station of a size would fall by chance alone around a target.',
    formula: '(r − (P(X ≤ r) − c) ÷ P(X = r)) ÷ n, X binomial(n, target), r the least count that reaches chance c',
    source: 'Spiegelhalter 2005, Statistics in Medicine 24:1185-1202, appendix A.1.1.',
    example: () => ({
      given: 'target 0.004, n 1,000',
      found: [
        ['low, 95 %', funnelLimit(0.004, 1000, 0.025).proportion],
        ['high, 95 %', funnelLimit(0.004, 1000, 0.975).proportion],
      ],
    }),
  },
  {
    name: 'Over-dispersion',
    gives: 'How far stations spread beyond chance: 1 is chance alone.',
    formula: 'mean of z², z = (p − target) √(n ÷ (target (1 − target)))',
    source: 'Spiegelhalter 2005, Statistics in Medicine 24:1185-1202, appendix A.3.',
    example: () => {
      const target = cases.reduce((a, b) => a + b, 0) / trials.reduce((a, b) => a + b, 0);
      return { given: hospitals, found: [['mean z²', overDispersion(cases, trials, target)?.factor ?? null]] };
    },
  },
  {
    name: 'Direct standardisation (Fay-Feuer)',
    gives: 'The rate that a station would have with the traffic of a standard.',
    formula: 'Σ w x ÷ n; gamma limits from its variance Σ w² x ÷ n² and the largest weight w ÷ n',
    source: 'Fay and Feuer 1997, Statistics in Medicine 16:791-801.',
    example: () => {
      const rate = directRate([3, 0, 5, 1], [1800, 240, 2900, 60], [21_000, 9000, 17_000, 3000]);
      return {
        given: 'x 3, 0, 5, 1; n 1,800, 240, 2,900, 60; weights 21, 9, 17, 3',
        found: [['adjusted', rate?.adjusted ?? null], ...endsOf(rate?.interval ?? null)],
      };
    },
  },
  {
    name: 'Standardised ratio',
    gives: 'Events seen by those expected from the rates of all, with exact Poisson limits.',
    formula: 'observed ÷ Σ rate × n; limits of the observed by the expected',
    source: 'Garwood 1936, Biometrika 28:437-442; Breslow and Day 1987, section 2.3.',
    example: () => {
      const { ratio, exact } = standardisedRatio(55, 75.34);
      return { given: '55 seen, 75.34 expected', found: [['ratio', ratio], ...endsOf(exact)] };
    },
  },
  {
    name: 'Shrinkage (beta-binomial)',
    gives: 'A station’s rate after it has borrowed from the others what its own numbers lack.',
    formula: '(α + x) ÷ (α + β + n), with α and β likeliest for all stations',
    source: 'Griffiths 1973, Biometrics 29:637-648; Gelman et al. 2013, section 2.4.',
    example: () => {
      const prior = betaBinomialFit(cases, trials);
      return {
        given: `${hospitals}; the first, with 0 of 47`,
        found: [
          ['α', prior?.alpha ?? null],
          ['β', prior?.beta ?? null],
          ['drawn to the others', prior === null ? null : shrunkProportion(0, 47, prior).mean],
        ],
      };
    },
  },
  {
    name: 'Ranks and how sure they are',
    gives: 'A rank with the limits that resampling gives it, and the chance to be among the top; or the expected rank.',
    formula: 'units drawn again within strata, ranked each time; expected rank = 1 + Σ P(other is higher)',
    source: 'Goldstein and Spiegelhalter 1996, JRSS A 159:385-443.',
    example: () => {
      const patterns = [
        { items: [0], counts: [1] },
        { items: [1], counts: [1] },
      ];
      const units = { stratumOf: [0, 0, 0, 0, 0], patternOf: [0, 0, 0, 1, 1], patterns, items: 2 };
      const [first] = resampledRanks(units, 1, 500, 1);
      const [expected] = expectedRanks([
        { alpha: 4, beta: 8 },
        { alpha: 3, beta: 9 },
      ]).ranks;
      return {
        given: 'five craft, three fouled on one part and two on another; 500 resamples, seed 1',
        found: [
          ['chance to lead', first?.inTop ?? null],
          ['expected rank of beta(4, 8) against beta(3, 9)', expected ?? null],
        ],
      };
    },
  },
  {
    name: 'Trend over seasons (Cochran-Armitage)',
    gives: 'Whether a share rises or falls in a straight line, and what the line leaves over.',
    formula: 'z = Σ (x − n p)(s − s̄) ÷ √(p (1 − p) Σ n (s − s̄)²); departure = χ² of all groups − z²',
    source: 'Armitage 1955, Biometrics 11:375-386.',
    example: () => {
      const trend = cochranArmitage([83, 90, 129, 70], [86, 93, 136, 82], [1, 2, 3, 4]);
      return {
        given: '83 of 86, 90 of 93, 129 of 136, 70 of 82',
        found: [
          ['z', trend.z],
          ['P', trend.p],
          ['departure, P', trend.pDeparture],
        ],
      };
    },
  },
  {
    name: 'Concentration',
    gives: 'How unevenly an amount lies among groups: 0 for evenly, towards 1 for all in one.',
    formula: 'Gini = Σ (2 i − n − 1) x₍ᵢ₎ ÷ (n Σ x)',
    source: 'Gini 1912; Gastwirth 1972, Review of Economics and Statistics 54:306-316.',
    example: () => ({ given: 'amounts 1, 1, 2, 6', found: [['Gini', concentration([1, 1, 2, 6]).gini]] }),
  },
];
