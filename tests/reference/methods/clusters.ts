import { clopperPearson } from '../../../src/statistic/proportion/clopper-pearson.js';
import { clusteredProportion, effectiveCounts, logitLimits } from '../../../src/statistic/proportion/clustered.js';
import { wilson } from '../../../src/statistic/proportion/wilson.js';
import type { Method } from '../inputs.js';

export const clusters: Readonly<Record<string, Method>> = {
  'cluster.proportion': (inputs) => {
    const { confidence } = inputs;
    const strata = inputs.has('strata') ? { strata: inputs.numbers('strata') } : {};
    const counts = { cases: inputs.numbers('x'), trials: inputs.numbers('n'), ...strata };
    const estimate = clusteredProportion(counts, confidence);
    const logit = logitLimits(estimate, confidence);
    const size = effectiveCounts(estimate);
    const score = size === null ? null : wilson(size.cases, size.trials, confidence);
    const exact = size === null ? null : clopperPearson(size.cases, size.trials, confidence);
    return {
      p: estimate.proportion,
      se: estimate.standardError,
      deff: estimate.designEffect,
      n_effective: estimate.effectiveTrials,
      df: estimate.degreesOfFreedom,
      icc_anova: estimate.intraclassCorrelation,
      lower_logit_t: logit?.low ?? null,
      upper_logit_t: logit?.high ?? null,
      lower_wilson_neff: score?.low ?? null,
      upper_wilson_neff: score?.high ?? null,
      lower_korn_graubard_no_df: exact?.low ?? null,
      upper_korn_graubard_no_df: exact?.high ?? null,
      lower_korn_graubard: estimate.interval?.low ?? null,
      upper_korn_graubard: estimate.interval?.high ?? null,
    };
  },
};
