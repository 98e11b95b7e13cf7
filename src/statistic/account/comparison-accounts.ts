import { fisherExact } from '../contingency/fisher.js';
import { independence } from '../contingency/independence.js';
import { mantelHaenszel } from '../contingency/mantel-haenszel.js';
import { raoScott } from '../contingency/rao-scott.js';
import { miettinenNurminenDifference } from '../difference/miettinen-nurminen.js';
import { newcombeDifference } from '../difference/newcombe.js';
import { benjaminiHochberg, holm } from '../many-comparisons.js';
import { mcNemar } from '../paired/mcnemar.js';
import { pairedOddsRatio } from '../paired/odds-ratio.js';
import { fiellerRatio } from '../ratio/fieller.js';
import { rateRatio } from '../ratio/rates.js';
import { koopmanRatio } from '../ratio/score.js';
import { firthLogistic } from '../regression/firth-logistic.js';
import { endsOf, type StatisticAccount } from './statistic-account.js';

/** Two groups against each other, pairs, strata, and many tests at once. */
export const comparisonAccounts: readonly StatisticAccount[] = [
  {
    name: 'Difference of proportions (Newcombe)',
    gives: 'x₁ ÷ n₁ − x₂ ÷ n₂ with limits that never leave −1 to 1.',
    formula: 'difference − √((p₁ − l₁)² + (u₂ − p₂)²) to difference + √((u₁ − p₁)² + (p₂ − l₂)²), l and u of Wilson',
    source: 'Newcombe 1998, Statistics in Medicine 17:873-890, method 10.',
    example: () => {
      const { value, interval } = newcombeDifference(56, 70, 48, 80);
      return { given: '56 of 70 less 48 of 80', found: [['difference', value], ...endsOf(interval)] };
    },
  },
  {
    name: 'Difference of proportions (Miettinen-Nurminen)',
    gives: 'The same by a score test with the likeliest proportions at each difference.',
    formula: '|p₁ − p₂ − d| = z √(variance at d × N ÷ (N − 1))',
    source: 'Miettinen and Nurminen 1985, Statistics in Medicine 4:213-226.',
    example: () => ({
      given: '56 of 70 less 48 of 80',
      found: endsOf(miettinenNurminenDifference(56, 70, 48, 80).interval),
    }),
  },
  {
    name: 'Ratio of proportions (Koopman)',
    gives: '(x₁ ÷ n₁) ÷ (x₂ ÷ n₂) with score limits, also where a group has no case.',
    formula: '|p₁ − r p₂| = z √(p̃₁ (1 − p̃₁) ÷ n₁ + r² p̃₂ (1 − p̃₂) ÷ n₂), p̃ likeliest at ratio r',
    source: 'Koopman 1984, Biometrics 40:513-517.',
    example: () => {
      const { value, interval } = koopmanRatio(7, 34, 1, 34);
      return { given: '7 of 34 by 1 of 34', found: [['ratio', value], ...endsOf(interval)] };
    },
  },
  {
    name: 'Ratio of two rates',
    gives: 'Events by exposure of one group by those of another, exact on the number of events.',
    formula: 'odds of the binomial limits of x₁ of x₁ + x₂, × exposure₂ ÷ exposure₁',
    source: 'Przyborowski and Wilenski 1940, Biometrika 31:313-323.',
    example: () => {
      const { value, interval } = rateRatio(11, 800, 3, 783);
      return { given: '11 in 800 hours by 3 in 783 hours', found: [['ratio', value], ...endsOf(interval)] };
    },
  },
  {
    name: 'Ratio of totals (Fieller)',
    gives: 'A total by another over the same units, such as inspections by staff hours over station-days.',
    formula: 'roots r of (ȳ − r x̄)² = t² × variance of ȳ − r x̄',
    source: 'Fieller 1954, JRSS B 16:175-185.',
    example: () => {
      const y = [143, 104, 69, 260, 75, 63, 50, 48, 111, 50];
      const x = [138, 93, 61, 179, 48, 37, 29, 23, 30, 2];
      const { value, interval } = fiellerRatio(y, x);
      return { given: 'ten cities of Cochran 1977, 1930 by 1920', found: [['ratio', value], ...endsOf(interval)] };
    },
  },
  {
    name: 'Like with like over strata (Mantel-Haenszel)',
    gives: 'One risk ratio, odds ratio and difference of two groups within strata.',
    formula: 'risk ratio = Σ x₁ n₂ ÷ N over Σ x₂ n₁ ÷ N',
    source: 'Mantel and Haenszel 1959, JNCI 22:719-748; Greenland and Robins 1985, Biometrics 41:55-68.',
    example: () => {
      const { riskRatio } = mantelHaenszel([
        { cases1: 647, others1: 622, cases2: 2, others2: 27 },
        { cases1: 41, others1: 28, cases2: 19, others2: 32 },
      ]);
      return {
        given: '647 of 1,269 against 2 of 29, and 41 of 69 against 19 of 51 (Doll and Hill)',
        found: [['risk ratio', riskRatio.value], ...endsOf(riskRatio.interval)],
      };
    },
  },
  {
    name: 'Penalised logistic model (Firth)',
    gives: 'Odds ratios with all else equal that stay finite when events are few.',
    formula: 'b maximises log likelihood + ½ log |information|; limits where the profile falls by χ²(0.95, 1) ÷ 2',
    source: 'Firth 1993, Biometrika 80:27-38; Heinze and Schemper 2002, Statistics in Medicine 21:2409-2419.',
    example: () => {
      const found = firthLogistic(
        [
          { columns: [0, 1], values: [1, 1], cases: 7, trials: 34 },
          { columns: [0], values: [1], cases: 0, trials: 34 },
        ],
        2,
      );
      const log = found?.coefficients[1];
      return {
        given: '7 of 34 against 0 of 34, log odds ratio',
        found: [['log odds ratio', log?.value ?? null], ...endsOf(log?.interval ?? null)],
      };
    },
  },
  {
    name: 'Tests of a table',
    gives: 'Fisher’s exact test, Pearson’s chi-squared, and the same with clusters (Rao-Scott).',
    formula: 'sum of tables as unlikely; Σ (seen − expected)² ÷ expected; the same by the mean design effect',
    source: 'Fisher 1935, JRSS 98:39-54; Rao and Scott 1992, Biometrics 48:577-585.',
    example: () => ({
      given: '7 of 34 against 1 of 34; clusters of 17',
      found: [
        ['Fisher, P', fisherExact(7, 27, 1, 33).pTwoSided],
        [
          'chi-squared',
          independence([
            [7, 27],
            [1, 33],
          ]).chiSquared,
        ],
        ['Rao-Scott, P', raoScott([4, 3, 1, 0], [17, 17, 17, 17], [0, 0, 1, 1]).p],
      ],
    }),
  },
  {
    name: 'Pairs (McNemar)',
    gives: 'Whether one of two sides is fouled more often, from pairs that differ, and the odds.',
    formula: 'mid-P = 2 P(X ≤ least) − P(X = least), X binomial(b + c, ½); odds = b ÷ c',
    source: 'McNemar 1947, Psychometrika 12:153-157; Fagerland, Lydersen and Laake 2013, BMC Med Res Methodol 13:91.',
    example: () => ({
      given: '1 pair one way, 7 the other',
      found: [
        ['mid-P', mcNemar(1, 7).pMid],
        ['odds', pairedOddsRatio(1, 7).value],
      ],
    }),
  },
  {
    name: 'Many tests at once',
    gives: 'P values adjusted for planned tests (Holm) and for screening (Benjamini-Hochberg).',
    formula: 'Holm: largest of p₍ⱼ₎ (m − j + 1) for j ≤ i; Benjamini-Hochberg: least of p₍ⱼ₎ m ÷ j for j ≥ i',
    source: 'Holm 1979, Scand J Statist 6:65-70; Benjamini and Hochberg 1995, JRSS B 57:289-300.',
    example: () => ({
      given: 'P values 0.01, 0.02, 0.04',
      found: [
        ['Holm, of 0.02', holm([0.01, 0.02, 0.04])[1] ?? null],
        ['Benjamini-Hochberg, of 0.02', benjaminiHochberg([0.01, 0.02, 0.04])[1] ?? null],
      ],
    }),
  },
];
