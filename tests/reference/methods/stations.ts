import { funnelLimit } from '../../../src/statistic/funnel/limits.js';
import { overDispersion } from '../../../src/statistic/funnel/over-dispersion.js';
import { betaBinomialFit, shrunkProportion } from '../../../src/statistic/shrinkage/beta-binomial.js';
import { expectedRanks } from '../../../src/statistic/shrinkage/expected-rank.js';
import { jamesStein } from '../../../src/statistic/shrinkage/james-stein.js';
import { betaMoments } from '../../../src/statistic/shrinkage/moments.js';
import { directRate } from '../../../src/statistic/standard/direct.js';
import { expectedEvents, standardisedRatio } from '../../../src/statistic/standard/indirect.js';
import type { Inputs, Method } from '../inputs.js';

/** Each pair of counts on its own. */
function eachCount<Result>(inputs: Inputs, make: (x: number, n: number) => Result): readonly Result[] {
  const n = inputs.numbers('n');
  return inputs.numbers('x').map((x, i) => make(x, n[i] ?? 0));
}

export const stations: Readonly<Record<string, Method>> = {
  'std.direct': (inputs) => {
    const strata = [inputs.numbers('count'), inputs.numbers('pop'), inputs.numbers('stdpop')] as const;
    const rate = directRate(...strata, inputs.confidence);
    return {
      crude: rate?.crude,
      adjusted: rate?.adjusted,
      se_poisson: rate?.standardErrorPoisson,
      se_binomial: rate?.standardErrorBinomial,
      lower_fay_feuer: rate?.interval.low,
      upper_fay_feuer: rate?.interval.high,
      upper_tiwari: rate?.upperTiwari,
    };
  },
  'std.indirect': (inputs) => {
    const given = inputs.has('expected');
    const expected = given
      ? inputs.number('expected')
      : expectedEvents(inputs.numbers('ref_rate'), inputs.numbers('pop'));
    const ratio = standardisedRatio(inputs.number('observed'), expected, inputs.confidence);
    return {
      expected: ratio.expected,
      smr: ratio.ratio,
      lower_exact: ratio.exact.low,
      upper_exact: ratio.exact.high,
      lower_byar: ratio.byar.low,
      upper_byar: ratio.byar.high,
      se_normal: ratio.standardError,
      lower_normal: ratio.normal.low,
      upper_normal: ratio.normal.high,
      p_exact_two_sided: ratio.p,
    };
  },
  'funnel.binomial_exact': (inputs) => {
    const n = inputs.numbers('n');
    const target = inputs.number('target');
    const limits = inputs.numbers('probs').flatMap((chance) => {
      const at = n.map((trials) => funnelLimit(target, trials, chance));
      return [
        [`interp_${chance}`, at.map(({ proportion }) => proportion)],
        [`count_${chance}`, at.map(({ count }) => count)],
      ];
    });
    return { n, ...Object.fromEntries(limits) };
  },
  'funnel.overdispersion': (inputs) => {
    const spread = overDispersion(inputs.numbers('x'), inputs.numbers('n'), inputs.number('target'));
    return {
      z: spread?.z,
      phi_raw: spread?.factor,
      phi_winsorised_10: spread?.factorWinsorised,
      tau2_dl: spread?.betweenVariance,
    };
  },
  'shrink.beta_binomial_ml': (inputs) => {
    const fit = betaBinomialFit(inputs.numbers('x'), inputs.numbers('n'));
    const shrunk = fit === null ? null : eachCount(inputs, (x, n) => shrunkProportion(x, n, fit, inputs.confidence));
    return {
      alpha: fit?.alpha ?? null,
      beta: fit?.beta ?? null,
      mean: fit?.mean ?? null,
      rho: fit?.correlation ?? null,
      loglik: fit?.logLikelihood ?? null,
      posterior_mean: shrunk?.map(({ mean }) => mean),
      posterior_lower: shrunk?.map(({ interval }) => interval.low),
      posterior_upper: shrunk?.map(({ interval }) => interval.high),
    };
  },
  'shrink.beta_fixed_prior': (inputs) => {
    const prior = { alpha: inputs.number('alpha'), beta: inputs.number('beta') };
    const shrunk = eachCount(inputs, (x, n) => shrunkProportion(x, n, prior, inputs.confidence));
    const columns = {
      alpha_post: shrunk.map(({ alpha }) => alpha),
      beta_post: shrunk.map(({ beta }) => beta),
      mean: shrunk.map(({ mean }) => mean),
      sd: shrunk.map(({ standardDeviation }) => standardDeviation),
      lower: shrunk.map(({ interval }) => interval.low),
      upper: shrunk.map(({ interval }) => interval.high),
    };
    if (shrunk.length > 1) return columns;
    return Object.fromEntries(Object.entries(columns).map(([name, [only]]) => [name, only]));
  },
  'shrink.beta_moments': (inputs) => {
    const moments = betaMoments(inputs.numbers('x'), inputs.numbers('n'));
    return {
      mean: moments?.mean ?? null,
      sd: moments?.standardDeviation ?? null,
      alpha: moments?.alpha ?? null,
      beta: moments?.beta ?? null,
    };
  },
  'shrink.james_stein': (inputs) => {
    const [trials = 0, ...others] = inputs.numbers('n');
    if (others.some((other) => other !== trials)) throw new Error('all n must be the same');
    const result = jamesStein(inputs.numbers('x'), trials);
    return {
      grand_mean: result?.mean,
      sigma2: result?.variance,
      sum_sq: result?.sumOfSquares,
      shrink: result?.kept,
      estimate: result?.shrunk,
    };
  },
  'rank.expected_beta': (inputs) => {
    const flat = inputs.number('prior');
    const { ranks, below } = expectedRanks(
      eachCount(inputs, (x, n) => shrunkProportion(x, n, { alpha: flat, beta: flat })),
    );
    return { expected_rank_desc: ranks, p_row_less_than_col: below[0] };
  },
};
