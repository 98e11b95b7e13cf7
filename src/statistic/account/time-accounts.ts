import { erlangWait } from '../queue/erlang.js';
import { generalWait } from '../queue/general.js';
import { incidenceAt } from '../survival/incidence-at.js';
import { kaplanMeier } from '../survival/kaplan-meier.js';
import { logRank } from '../survival/log-rank.js';
import { survivalQuantile } from '../survival/quantile.js';
import { restrictedMean } from '../survival/restricted-mean.js';
import { endsOf, type StatisticAccount } from './statistic-account.js';

const weeks = [6, 6, 6, 7, 10, 13, 16, 22, 23, 6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35];
const ended = weeks.map((_, at) => (at < 9 ? 1 : 0));
const leukaemia = '21 patients on 6-MP, weeks of remission (Freireich et al. 1963)';

/** Times, some of them still open, and waiting lines. */
export const timeAccounts: readonly StatisticAccount[] = [
  {
    name: 'Share not yet through (Kaplan-Meier)',
    gives: 'The share still there over time, each followed as long as it was.',
    formula: 'S(t) = Π (1 − ended ÷ still there) over endings up to t; limits on log(−log S)',
    source: 'Kaplan and Meier 1958, JASA 53:457-481.',
    example: () => {
      const curve = kaplanMeier(weeks, ended);
      return { given: leukaemia, found: [['S(10)', curve.survival[curve.times.indexOf(10)] ?? null]] };
    },
  },
  {
    name: 'Median and other times (Brookmeyer-Crowley)',
    gives: 'The time by which a share was through, with limits where those of the curve reach it.',
    formula: 'first t with S(t) ≤ 1 − share; where S rests on it exactly, the middle of that stretch',
    source: 'Brookmeyer and Crowley 1982, Biometrics 38:29-41.',
    example: () => {
      const { value, interval } = survivalQuantile(kaplanMeier(weeks, ended), 0.5);
      return { given: leukaemia, found: [['median', value], ...endsOf(interval)] };
    },
  },
  {
    name: 'Mean to a horizon',
    gives: 'The mean of the time or the horizon, whichever comes first: comparable where medians are not reached.',
    formula: '∫ S(t) dt from 0 to the horizon',
    source: 'Irwin 1949, Journal of Hygiene 47:188-189; Royston and Parmar 2013, BMC Med Res Methodol 13:152.',
    example: () => {
      const { value, interval } = restrictedMean(kaplanMeier(weeks, ended), 35);
      return { given: `${leukaemia}, horizon 35`, found: [['mean', value], ...endsOf(interval)] };
    },
  },
  {
    name: 'Cumulative incidence',
    gives: 'The share that came to one of several ends by a time; one minus Kaplan-Meier would overstate it.',
    formula: 'F(t) = Σ S(u−) × ended so ÷ still there; error by the infinitesimal jackknife, clusters added up first',
    source: 'Aalen and Johansen 1978, Scand J Statist 5:141-150; Therneau and Grambsch 2000, section 2.2.',
    example: () => {
      const times = [3, 5, 5, 8, 11, 11, 14, 20, 21, 30, 34, 40];
      const causes = [1, 1, 2, 0, 1, 1, 2, 0, 1, 1, 2, 1];
      const { value, standardError, interval } = incidenceAt(times, causes, 1, 12);
      return {
        given: 'minutes 3 1, 5 1, 5 2, 8 open, 11 1, 11 1, 14 2, 20 open, 21 1, 30 1, 34 2, 40 1: end 1 by 12',
        found: [['share', value], ['standard error', standardError], ...endsOf(interval)],
      };
    },
  },
  {
    name: 'Curves compared (log-rank)',
    gives: 'Whether groups get through at the same pace.',
    formula: 'Σ (ended − expected) by group, by its covariance',
    source: 'Mantel 1966, Cancer Chemotherapy Reports 50:163-170; Peto and Peto 1972, JRSS A 135:185-207.',
    example: () => {
      const test = logRank([1, 2, 3, 4, 5, 6, 7, 8, 9], [1, 1, 0, 1, 1, 1, 1, 0, 1], [1, 1, 1, 2, 2, 2, 3, 3, 3]);
      return {
        given: 'three groups of three',
        found: [
          ['chi-squared', test.chiSquared],
          ['P', test.p],
        ],
      };
    },
  },
  {
    name: 'Waiting lines',
    gives: 'The wait where arrivals and washes are irregular: exact for the simplest line, near for others.',
    formula: 'Erlang C × 1 ÷ (c μ − λ); Allen-Cunneen: that × (variation of gaps² + of washes²) ÷ 2',
    source: 'Erlang 1917; Allen 1990, Probability, Statistics and Queueing Theory, 2nd ed., section 5.3.',
    example: () => ({
      given: '4 craft an hour, 3 washes an hour a unit, 2 units; washes half as irregular',
      found: [
        ['Erlang, mean wait in hours', erlangWait(4, 3, 2).steady?.meanWait ?? null],
        [
          'Allen-Cunneen, mean wait in hours',
          generalWait({
            arrivalMean: 1 / 4,
            arrivalDeviation: 1 / 4,
            serviceMean: 1 / 3,
            serviceDeviation: 1 / 6,
            servers: 2,
          }).allenCunneen,
        ],
      ],
    }),
  },
];
