import { greedyCover } from '../cover.js';
import { captureRecapture } from '../detection/capture-recapture.js';
import { agreement } from '../detection/kappa.js';
import { exactCover } from '../exact-cover.js';
import { quantile } from '../quantile.js';
import { percentileInterval } from '../resample/percentile-interval.js';
import { endsOf, type StatisticAccount } from './statistic-account.js';

/** Second looks, sets of parts, and plain descriptions. */
export const lookAccounts: readonly StatisticAccount[] = [
  {
    name: 'What two looks both missed (Lincoln-Petersen, Chapman)',
    gives: 'The chance that a look finds what is there, and a range for what neither found.',
    formula: 'chance = m ÷ n₂; all = (n₁ + 1)(n₂ + 1) ÷ (m + 1) − 1; log-normal limits on those not seen',
    source: 'Chapman 1951, Univ California Publ Statist 1:131-160; Burnham et al. 1987, p. 212.',
    example: () => {
      const found = captureRecapture(10, 15, 5);
      return {
        given: '10 at the first look, 15 at the second, 5 at both',
        found: [['chance', found.first], ['all', found.chapman], ...endsOf(found.logNormal)],
      };
    },
  },
  {
    name: 'Agreement of two looks',
    gives: 'Agreement on finds, and agreement beyond chance (kappa), which sinks where finds are rare.',
    formula: 'positive = 2 a ÷ (2 a + b + c); kappa = (agreed − by chance) ÷ (1 − by chance)',
    source: 'Cicchetti and Feinstein 1990, J Clin Epidemiol 43:551-558; Cohen 1960, Educ Psychol Meas 20:37-46.',
    example: () => {
      const found = agreement([
        [20, 5],
        [10, 15],
      ]);
      return {
        given: '20 both, 5 first only, 10 second only, 15 neither',
        found: [
          ['positive', found.positive],
          ['kappa', found.kappa],
        ],
      };
    },
  },
  {
    name: 'Fewest parts that catch most craft',
    gives: 'Parts one by one, always the one that adds most; and the best set of as many, by branch and bound.',
    formula: 'greedy ≥ (1 − (1 − 1 ÷ k)ᵏ) × best',
    source: 'Nemhauser, Wolsey and Fisher 1978, Mathematical Programming 14:265-294.',
    example: () => {
      const sets = [
        [1, 2, 3, 4],
        [1, 2, 5, 6],
        [3, 4, 7, 8],
        [1, 3, 5, 7, 9],
      ];
      const kinds = Array.from({ length: 9 }, (_, at) => ({
        sets: sets.flatMap((set, place) => (set.includes(at + 1) ? [place] : [])),
        count: 1,
      }));
      return {
        given: 'sets 1 2 3 4, 1 2 5 6, 3 4 7 8, 1 3 5 7 9; two of them',
        found: [
          ['greedy covers', greedyCover(sets, 2).covered.at(-1) ?? null],
          ['the best cover', exactCover(kinds, 4, 2)?.covered ?? null],
        ],
      };
    },
  },
  {
    name: 'Quantiles',
    gives: 'The value below which a share lies; type 7 of Hyndman and Fan unless another is named.',
    formula: 'x₍ⱼ₎ + g (x₍ⱼ₊₁₎ − x₍ⱼ₎), j + g = 1 + (n − 1) p',
    source: 'Hyndman and Fan 1996, The American Statistician 50:361-365.',
    example: () => ({ given: '1, 2, 4, 8 at one quarter', found: [['quantile', quantile([1, 2, 4, 8], 0.25)]] }),
  },
  {
    name: 'Limits by resampling',
    gives: 'The middle share of a figure’s values over resamples of station-days within station and season.',
    formula: 'type 7 quantiles at α ÷ 2 and 1 − α ÷ 2 of the resampled values',
    source: 'Efron 1979, Annals of Statistics 7:1-26; Rao and Wu 1988, JASA 83:231-241.',
    example: () => ({
      given: 'resampled values 1 to 100, middle 90 %',
      found: endsOf(
        percentileInterval(
          Float64Array.from({ length: 100 }, (_, at) => at + 1),
          0.9,
          'resampled',
        ),
      ),
    }),
  },
];
