import { cumulativeIncidence } from '../../../src/statistic/survival/cumulative-incidence.js';
import { kaplanMeier } from '../../../src/statistic/survival/kaplan-meier.js';
import { logRank } from '../../../src/statistic/survival/log-rank.js';
import { survivalQuantile } from '../../../src/statistic/survival/quantile.js';
import { restrictedMean } from '../../../src/statistic/survival/restricted-mean.js';
import type { Method } from '../inputs.js';

export const survival: Readonly<Record<string, Method>> = {
  'surv.kaplan_meier': (inputs) => {
    const curve = kaplanMeier(inputs.numbers('time'), inputs.numbers('status'), { confidence: inputs.confidence });
    const median = survivalQuantile(curve, 0.5);
    const mean = inputs.has('tau') ? restrictedMean(curve, inputs.number('tau')) : null;
    return {
      times: curve.times,
      n_risk: curve.atRisk,
      n_event: curve.events,
      surv: curve.survival,
      se_greenwood: curve.standardError,
      lower_loglog: curve.low,
      upper_loglog: curve.high,
      q25: survivalQuantile(curve, 0.25).value,
      median: median.value,
      median_lower: median.interval.low,
      median_upper: median.interval.high,
      q75: survivalQuantile(curve, 0.75).value,
      rmst: mean?.value,
      rmst_se: mean?.standardError,
    };
  },
  'surv.logrank': (inputs) => {
    const test = logRank(inputs.numbers('time'), inputs.numbers('status'), inputs.numbers('group'));
    return {
      observed: test.observed,
      expected: test.expected,
      chi2: test.chiSquared,
      df: test.degreesOfFreedom,
      p: test.p,
    };
  },
  'surv.cumulative_incidence': (inputs) => {
    const cause = inputs.numbers('cause');
    const causes = Array.from({ length: Math.max(2, ...cause) }, (_, i) => i + 1);
    const shares = cumulativeIncidence(inputs.numbers('time'), cause, inputs.numbers('at'), causes);
    return Object.fromEntries(shares.map(({ cause, incidence }) => [`cif_cause${cause}`, incidence]));
  },
};
