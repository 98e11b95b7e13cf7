import { poissonExact } from '../poisson.js';
import { agrestiCoull } from '../proportion/agresti-coull.js';
import { clopperPearson } from '../proportion/clopper-pearson.js';
import { clusteredProportion } from '../proportion/clustered.js';
import { jeffreys } from '../proportion/jeffreys.js';
import { midP } from '../proportion/mid-p.js';
import { wilson } from '../proportion/wilson.js';
import { zeroUpper } from '../proportion/zero-cases.js';
import { endsOf, type StatisticAccount } from './statistic-account.js';

const given = '81 cases of 263';

/** Proportions and rates of events. */
export const proportionAccounts: readonly StatisticAccount[] = [
  {
    name: 'Exact interval of a proportion (Clopper-Pearson)',
    gives: 'Limits that hold the true proportion at least as often as they say, however few the cases.',
    formula: 'low: P(X ≥ x) = α ÷ 2; high: P(X ≤ x) = α ÷ 2; X binomial(n, limit), by beta quantiles',
    source: 'Clopper and Pearson 1934, Biometrika 26:404-413.',
    example: () => ({ given, found: endsOf(clopperPearson(81, 263)) }),
  },
  {
    name: 'Proportion of clusters (Korn-Graubard)',
    gives:
      'The exact interval at the number of independent trials that whole clusters, such as station-days, are worth.',
    formula:
      'n* = p (1 − p) ÷ variance of the ratio by linearisation, × (t of n − 1 ÷ t of clusters − strata)²; exact at n*, never above n; findings and rates take all station-days as one stratum',
    source:
      'Korn and Graubard 1998, Survey Methodology 24:193-201; Parker et al. 2017, Vital and Health Statistics 2(175).',
    example: () => {
      const found = clusteredProportion({ cases: [0, 0, 6, 0, 2, 0], trials: [20, 25, 40, 15, 30, 20] });
      return {
        given: 'cases 0, 0, 6, 0, 2, 0 of trials 20, 25, 40, 15, 30, 20 on six station-days',
        found: [['proportion', found.proportion], ['design effect', found.designEffect], ...endsOf(found.interval)],
      };
    },
  },
  {
    name: 'No case at all',
    gives: 'How large a proportion can be when none of n trials was a case; one-sided, and said so.',
    formula: 'high = 1 − α^(1 ÷ n)',
    source: 'Hanley and Lippman-Hand 1983, JAMA 249:1743-1745.',
    example: () => ({ given: '0 cases of 300', found: [['high', zeroUpper(300).interval.high]] }),
  },
  {
    name: 'Score interval of a proportion (Wilson)',
    gives: 'Limits at which the proportion would just be z standard errors away.',
    formula: '(p + z² ÷ 2n ± z √(p (1 − p) ÷ n + z² ÷ 4n²)) ÷ (1 + z² ÷ n)',
    source: 'Wilson 1927, JASA 22:209-212; Newcombe 1998, Statistics in Medicine 17:857-872, method 3.',
    example: () => ({ given, found: endsOf(wilson(81, 263)) }),
  },
  {
    name: 'Jeffreys, mid-P and Agresti-Coull intervals',
    gives: 'Three more intervals of a proportion, for comparison with others’ work.',
    formula: 'beta(x + ½, n − x + ½) quantiles; P(X > x) + ½ P(X = x) = α ÷ 2; Wald at (x + z² ÷ 2) ÷ (n + z²)',
    source: 'Brown, Cai and DasGupta 2001, Statistical Science 16:101-133; Agresti and Coull 1998, Am Stat 52:119-126.',
    example: () => ({
      given,
      found: [
        ['Jeffreys low', jeffreys(81, 263).low],
        ['mid-P low', midP(81, 263).low],
        ['Agresti-Coull low', agrestiCoull(81, 263).low],
      ],
    }),
  },
  {
    name: 'Exact interval of a rate (Garwood)',
    gives: 'Limits of events by exposure, such as interceptions by staff hours.',
    formula: 'low = gamma quantile(α ÷ 2, x) ÷ exposure; high = gamma quantile(1 − α ÷ 2, x + 1) ÷ exposure',
    source: 'Garwood 1936, Biometrika 28:437-442.',
    example: () => ({ given: '3 events in 640 hours', found: endsOf(poissonExact(3, 640)) }),
  },
];
