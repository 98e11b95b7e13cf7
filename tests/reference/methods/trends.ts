import { cochranArmitage } from '../../../src/statistic/trend/cochran-armitage.js';
import { logisticTrend } from '../../../src/statistic/trend/logistic.js';
import { poissonTrend } from '../../../src/statistic/trend/poisson.js';
import type { Method } from '../inputs.js';

export const trends: Readonly<Record<string, Method>> = {
  'trend.cochran_armitage': (inputs) => {
    const trend = cochranArmitage(inputs.numbers('x'), inputs.numbers('n'), inputs.numbers('scores'));
    return {
      z: trend.z,
      chi2: trend.chiSquared,
      p: trend.p,
      z_mantel: trend.zMantel,
      p_mantel: trend.pMantel,
      slope: trend.slope,
    };
  },
  'trend.logistic': (inputs) => {
    const { confidence } = inputs;
    const trend = logisticTrend(inputs.numbers('x'), inputs.numbers('n'), inputs.numbers('scores'), confidence);
    return {
      intercept: trend?.intercept ?? null,
      slope: trend?.slope ?? null,
      se: trend?.slopeStandardError ?? null,
      p_wald: trend?.pWald ?? null,
      or: trend?.oddsRatio.value ?? null,
      or_lower: trend?.oddsRatio.interval?.low ?? null,
      or_upper: trend?.oddsRatio.interval?.high ?? null,
      lr_chi2: trend?.likelihoodRatio ?? null,
      residual_deviance: trend?.residualDeviance ?? null,
    };
  },
  'trend.poisson': (inputs) => {
    const { confidence } = inputs;
    const trend = poissonTrend(inputs.numbers('x'), inputs.numbers('exposure'), inputs.numbers('scores'), confidence);
    return {
      intercept: trend?.intercept ?? null,
      slope: trend?.slope ?? null,
      se: trend?.slopeStandardError ?? null,
      p_wald: trend?.pWald ?? null,
      rate_ratio: trend?.rateRatio.value ?? null,
      lower: trend?.rateRatio.interval?.low ?? null,
      upper: trend?.rateRatio.interval?.high ?? null,
      pearson_dispersion: trend?.dispersion ?? null,
    };
  },
};
