import { fisherExact } from '../../../src/statistic/contingency/fisher.js';
import { independence } from '../../../src/statistic/contingency/independence.js';
import { mantelHaenszel } from '../../../src/statistic/contingency/mantel-haenszel.js';
import { raoScott } from '../../../src/statistic/contingency/rao-scott.js';
import { agreement } from '../../../src/statistic/detection/kappa.js';
import { benjaminiHochberg, bonferroni, hochberg, holm } from '../../../src/statistic/many-comparisons.js';
import { pairedDifference } from '../../../src/statistic/paired/difference.js';
import { mcNemar } from '../../../src/statistic/paired/mcnemar.js';
import { pairedOddsRatio } from '../../../src/statistic/paired/odds-ratio.js';
import type { Method } from '../inputs.js';

export const tables: Readonly<Record<string, Method>> = {
  'fisher.exact': (inputs) => {
    const [[a, b] = [], [c, d] = []] = inputs.table('table');
    if (a === undefined || b === undefined || c === undefined || d === undefined) throw new Error('not two by two');
    const { value, interval, pTwoSided, pGreater } = fisherExact(a, b, c, d, inputs.confidence);
    return {
      p_two_sided: pTwoSided,
      p_greater: pGreater,
      or_conditional: value,
      lower: interval?.low ?? null,
      upper: interval?.high ?? null,
    };
  },
  'chisq.independence': (inputs) => {
    const test = independence(inputs.table('table'));
    return {
      x2: test.chiSquared,
      df: test.degreesOfFreedom,
      p: test.p,
      g2: test.likelihoodRatio,
      p_g2: test.pLikelihoodRatio,
      min_expected: test.smallestExpected,
      cramers_v: test.cramersV,
      x2_yates: test.chiSquaredYates,
      p_yates: test.pYates,
    };
  },
  'cluster.rao_scott': (inputs) => {
    const test = raoScott(inputs.numbers('x'), inputs.numbers('n'), inputs.numbers('group'));
    return {
      deff: test.designEffects,
      x2_unadjusted: test.chiSquaredUnadjusted,
      x2_rao_scott: test.chiSquared,
      df: test.degreesOfFreedom,
      p: test.p,
    };
  },
  'stratified.mantel_haenszel': (inputs) => {
    const strata = inputs.table('strata').map(([cases1 = 0, others1 = 0, cases2 = 0, others2 = 0]) => {
      return { cases1, others1, cases2, others2 };
    });
    const pooled = mantelHaenszel(strata, inputs.confidence);
    const { oddsRatio, riskRatio, difference, differenceSato, homogeneity, woolf } = pooled;
    return {
      or_mh: oddsRatio.value,
      or_lower_rbg: oddsRatio.interval?.low ?? null,
      or_upper_rbg: oddsRatio.interval?.high ?? null,
      rr_mh: riskRatio.value,
      rr_lower: riskRatio.interval?.low ?? null,
      rr_upper: riskRatio.interval?.high ?? null,
      rd_mh: difference.value,
      rd_se_gr: difference.standardError,
      rd_lower_gr: difference.interval?.low ?? null,
      rd_upper_gr: difference.interval?.high ?? null,
      rd_se_sato: differenceSato.standardError,
      rd_lower_sato: differenceSato.interval?.low ?? null,
      rd_upper_sato: differenceSato.interval?.high ?? null,
      cmh_chi2: pooled.chiSquared,
      cmh_p: pooled.p,
      cmh_chi2_cc: pooled.chiSquaredCorrected,
      cmh_p_cc: pooled.pCorrected,
      breslow_day: homogeneity?.chiSquared ?? null,
      breslow_day_tarone: homogeneity?.chiSquaredTarone ?? null,
      breslow_day_p: homogeneity?.p ?? null,
      or_woolf: woolf.value,
      or_woolf_lower: woolf.interval?.low ?? null,
      or_woolf_upper: woolf.interval?.high ?? null,
    };
  },
  'paired.mcnemar': (inputs) => {
    const test = mcNemar(inputs.number('b'), inputs.number('c'));
    return {
      z: test.z,
      chi2: test.chiSquared,
      p_asymptotic: test.p,
      chi2_cc: test.chiSquaredCorrected,
      p_cc: test.pCorrected,
      p_exact: test.pExact,
      p_midp: test.pMid,
    };
  },
  'paired.diff': (inputs) => {
    const [a, b, c, d] = ['a', 'b', 'c', 'd'].map((name) => inputs.number(name)) as [number, number, number, number];
    const { value, standardError, wald, newcombe, tango } = pairedDifference(a, b, c, d, inputs.confidence);
    return {
      estimate: value,
      se_wald: standardError,
      lower_wald: wald.low,
      upper_wald: wald.high,
      lower_newcombe: newcombe.low,
      upper_newcombe: newcombe.high,
      lower_tango: tango.low,
      upper_tango: tango.high,
    };
  },
  'paired.or': (inputs) => {
    const { value, exact, midP, wald } = pairedOddsRatio(inputs.number('b'), inputs.number('c'), inputs.confidence);
    return {
      estimate: value,
      lower_exact: exact.low,
      upper_exact: exact.high,
      lower_midp: midP.low,
      upper_midp: midP.high,
      lower_wald: wald?.low ?? null,
      upper_wald: wald?.high ?? null,
    };
  },
  padjust: (inputs) => {
    const p = inputs.numbers('p');
    return { bonferroni: bonferroni(p), holm: holm(p), hochberg: hochberg(p), bh: benjaminiHochberg(p) };
  },
  'agree.kappa': (inputs) => {
    const found = agreement(inputs.table('table'), inputs.confidence);
    return {
      po: found.observed,
      pe: found.byChance,
      kappa: found.kappa,
      ase: found.standardError,
      lower: found.interval?.low ?? null,
      upper: found.interval?.high ?? null,
      se_null: found.standardErrorNull,
      pabak: found.kappaEvenUse,
      positive_agreement: found.positive,
      negative_agreement: found.negative,
      kappa_equal_spacing_weights: found.kappaWeighted,
    };
  },
};
