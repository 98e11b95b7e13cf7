import { breslowDay } from '../contingency/breslow-day.js';
import { dependentObservers, twoPassRemoval } from '../detection/two-observers.js';
import { agrestiCaffo } from '../difference/agresti-caffo.js';
import { pairedDifference } from '../paired/difference.js';
import { poissonTest } from '../poisson-test.js';
import { exactTest } from '../proportion/exact-test.js';
import { costPerEvent } from '../ratio/cost-per-event.js';
import { katzRatio, woolfOddsRatio } from '../ratio/wald.js';
import { jamesStein } from '../shrinkage/james-stein.js';
import { betaMoments } from '../shrinkage/moments.js';
import { summary } from '../summary.js';
import { logisticTrend } from '../trend/logistic.js';
import { poissonTrend } from '../trend/poisson.js';
import { endsOf, type StatisticAccount } from './statistic-account.js';

/** Methods that no finding shows first, kept to compare with others' work. */
export const furtherAccounts: readonly StatisticAccount[] = [
  {
    name: 'Exact tests of one share or rate',
    gives: 'The chance of counts as unlikely as those seen under a stated proportion or mean.',
    formula: 'Σ P(X = k) over k with P(X = k) ≤ P(X = x)',
    source: 'Sterne 1954, Biometrika 41:275-278; as in R’s binom.test and poisson.test.',
    example: () => ({
      given: '7 of 20 where 0.5 is stated; 10 events where 5.2 are',
      found: [
        ['binomial, P', exactTest(7, 20, 0.5)],
        ['Poisson, P', poissonTest(10, 5.2)],
      ],
    }),
  },
  {
    name: 'Adjusted Wald difference (Agresti-Caffo)',
    gives: 'A difference of proportions with one case and one other added to each group.',
    formula: 'p̃₁ − p̃₂ ± z √(Σ p̃ (1 − p̃) ÷ (n + 2)), p̃ = (x + 1) ÷ (n + 2)',
    source: 'Agresti and Caffo 2000, The American Statistician 54:280-288.',
    example: () => ({ given: '56 of 70 less 48 of 80', found: endsOf(agrestiCaffo(56, 70, 48, 80).interval) }),
  },
  {
    name: 'Ratios on the log scale (Katz, Woolf)',
    gives: 'Risk and odds ratios with symmetric limits of their logarithm.',
    formula: 'ratio × exp(± z √(1/x₁ − 1/n₁ + 1/x₂ − 1/n₂)); odds: the sum of the four reciprocals',
    source: 'Katz et al. 1978, Biometrics 34:469-474; Woolf 1955, Annals of Human Genetics 19:251-253.',
    example: () => ({
      given: '7 of 34 by 1 of 34',
      found: [
        ['Katz, high', katzRatio(7, 34, 1, 34).interval?.high ?? null],
        ['Woolf, high', woolfOddsRatio(7, 34, 1, 34).interval?.high ?? null],
      ],
    }),
  },
  {
    name: 'Whether odds ratios differ between strata (Breslow-Day)',
    gives: 'A test of one odds ratio for all strata.',
    formula: 'Σ (x₁ − expected)² ÷ variance, expected at the pooled odds ratio',
    source: 'Breslow and Day 1980, section 4.4; Tarone 1985, Biometrika 72:91-95.',
    example: () => ({
      given: 'the Doll and Hill table, odds ratio 4.52391',
      found: [
        [
          'chi-squared',
          breslowDay(
            [
              { cases1: 647, others1: 622, cases2: 2, others2: 27 },
              { cases1: 41, others1: 28, cases2: 19, others2: 32 },
            ],
            4.52391476228126,
          ).chiSquared,
        ],
      ],
    }),
  },
  {
    name: 'Difference of paired shares',
    gives: 'By how much one side is fouled more often than the other, on pairs.',
    formula: '(b − c) ÷ n with square-and-add limits corrected for the correlation of the pair',
    source: 'Newcombe 1998, Statistics in Medicine 17:2635-2650, method 10.',
    example: () => {
      const { value, newcombe } = pairedDifference(20, 12, 2, 16);
      return {
        given: '20 both, 12 one way, 2 the other, 16 neither',
        found: [['difference', value], ...endsOf(newcombe)],
      };
    },
  },
  {
    name: 'Shrinkage by moments, and of the logit (James-Stein)',
    gives: 'Two other ways to draw stations towards each other.',
    formula: 'α + β from mean and variance of shares; x̄ + (1 − (k − 3) σ² ÷ Σ (x − x̄)²)(x − x̄)',
    source: 'Kleinman 1973, JASA 68:46-54; Efron and Morris 1975, JASA 70:311-319.',
    example: () => ({
      given: '3, 8, 5 and 12 of 45',
      found: [
        ['α by moments', betaMoments([3, 8, 5, 12], [45, 45, 45, 45])?.alpha ?? null],
        ['James-Stein, of 3', jamesStein([3, 8, 5, 12], 45)?.shrunk[0] ?? null],
      ],
    }),
  },
  {
    name: 'Trends by a model',
    gives: 'The odds, or the rate, at one more season by those before.',
    formula: 'log odds or log rate = a + b × season, likeliest b',
    source: 'Agresti 2013, Categorical Data Analysis, 3rd ed., sections 4.3 and 5.3.4.',
    example: () => ({
      given: '2 of 3,110, 5 of 2,987, 4 of 3,302, 9 of 3,254',
      found: [
        ['odds ratio', logisticTrend([2, 5, 4, 9], [3110, 2987, 3302, 3254], [1, 2, 3, 4])?.oddsRatio.value ?? null],
        ['rate ratio', poissonTrend([2, 5, 4, 9], [3110, 2987, 3302, 3254], [1, 2, 3, 4])?.rateRatio.value ?? null],
      ],
    }),
  },
  {
    name: 'Two observers, two passes',
    gives: 'How many there were when the second look knows of the first, or both take away what they find.',
    formula: 'p from x₁₁, x₁₂, x₂₂, x₂₁; n = x₁² ÷ (x₁ − x₂)',
    source:
      'Cook and Jacobson 1979, Biometrics 35:735-742; Seber and Le Cren 1967, Journal of Animal Ecology 36:631-643.',
    example: () => ({
      given: '40, 10, 35, 12 by two observers; 60 and 20 taken away',
      found: [
        ['by two observers', dependentObservers(40, 10, 35, 12).total],
        ['by two passes', twoPassRemoval(60, 20).total],
      ],
    }),
  },
  {
    name: 'Cost per event',
    gives: 'A known cost by a random number of events.',
    formula: 'cost ÷ exact Poisson limits of the events',
    source: 'Garwood 1936, Biometrika 28:437-442.',
    example: () => {
      const { value, interval } = costPerEvent(1_200_000, 138);
      return { given: '1,200,000 dollars, 138 events', found: [['dollars an event', value], ...endsOf(interval)] };
    },
  },
  {
    name: 'Plain summary',
    gives: 'Count, mean and standard deviation.',
    formula: 'x̄ = Σ x ÷ n; √(Σ (x − x̄)² ÷ (n − 1))',
    source: 'Chan, Golub and LeVeque 1983, The American Statistician 37:242-247.',
    example: () => {
      const { mean, standardDeviation } = summary([1, 2, 4, 8]);
      return {
        given: '1, 2, 4, 8',
        found: [
          ['mean', mean],
          ['standard deviation', standardDeviation],
        ],
      };
    },
  },
];
