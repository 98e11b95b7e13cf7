import { concentration, groupsHolding } from '../../../src/statistic/concentration.js';
import { greedyCover } from '../../../src/statistic/cover.js';
import { captureRecapture } from '../../../src/statistic/detection/capture-recapture.js';
import { dependentObservers, twoPassRemoval } from '../../../src/statistic/detection/two-observers.js';
import { type CoveredKind, exactCover } from '../../../src/statistic/exact-cover.js';
import { erlangWait } from '../../../src/statistic/queue/erlang.js';
import { generalWait } from '../../../src/statistic/queue/general.js';
import type { Method } from '../inputs.js';

/** Each element with the sets that hold it. */
function kindsOf(sets: readonly (readonly number[])[]): CoveredKind[] {
  return [...new Set(sets.flat())].map((element) => ({
    sets: sets.flatMap((set, at) => (set.includes(element) ? [at] : [])),
    count: 1,
  }));
}

export const operations: Readonly<Record<string, Method>> = {
  'queue.mmc': (inputs) => {
    const { utilisation, steady } = erlangWait(inputs.number('lambda'), inputs.number('mu'), inputs.number('c'));
    return {
      utilisation,
      p0: steady?.chanceEmpty ?? null,
      p_wait: steady?.chanceOfWait ?? null,
      lq: steady?.meanWaiting ?? null,
      wq: steady?.meanWait ?? null,
      l: steady?.meanPresent ?? null,
      w: steady?.meanStay ?? null,
      p_wait_exceeds_t: inputs.has('t') ? (steady?.waitExceeds(inputs.number('t')) ?? null) : null,
    };
  },
  'queue.ggc': (inputs) => {
    const { utilisation, allenCunneen, sakasegawa } = generalWait({
      arrivalMean: inputs.number('arrival_mean'),
      arrivalDeviation: inputs.number('arrival_sd'),
      serviceMean: inputs.number('service_mean'),
      serviceDeviation: inputs.number('service_sd'),
      servers: inputs.number('c'),
    });
    return { utilisation, wq_allen_cunneen: allenCunneen, wq_sakasegawa: sakasegawa };
  },
  'detect.capture_recapture': (inputs) => {
    const { confidence } = inputs;
    const found = captureRecapture(inputs.number('n1'), inputs.number('n2'), inputs.number('m'), confidence);
    return {
      lincoln_petersen: found.lincolnPetersen,
      lp_se_delta: found.lincolnPetersenError,
      chapman: found.chapman,
      chapman_se: found.chapmanError,
      chapman_lower_normal: found.normal?.low ?? null,
      chapman_upper_normal: found.normal?.high ?? null,
      chapman_lower_log: found.logNormal?.low ?? null,
      chapman_upper_log: found.logNormal?.high ?? null,
      p1: found.first,
      p2: found.second,
      p_either: found.either,
    };
  },
  'detect.double_observer_dependent': (inputs) => {
    const [x11, x12, x22, x21] = ['x11', 'x12', 'x22', 'x21'].map((name) => inputs.number(name)) as [
      number,
      number,
      number,
      number,
    ];
    const { first, second, either, total } = dependentObservers(x11, x12, x22, x21);
    return { p1: first, p2: second, p_either: either, n: total };
  },
  'detect.removal_two_pass': (inputs) => {
    const { chance, total, standardError } = twoPassRemoval(inputs.number('x1'), inputs.number('x2'));
    return { p: chance, n: total, se: standardError };
  },
  'concentration.gini': (inputs) => {
    const amounts = inputs.numbers('x');
    const { gini, giniUnbiased, lorenz } = concentration(amounts);
    return { gini, gini_unbiased: giniUnbiased, lorenz, min_groups_for_80pct: groupsHolding(amounts, 0.8) };
  },
  'cover.greedy': (inputs) => {
    const sets = inputs.table('sets');
    const { picks, covered, bound, boundAnyNumber } = greedyCover(sets, inputs.number('k'));
    return {
      greedy_picks_1based: picks.map((position) => position + 1),
      greedy_covered: covered.at(-1) ?? 0,
      optimal_covered: exactCover(kindsOf(sets), sets.length, inputs.number('k'))?.covered ?? null,
      bound,
      bound_1_minus_1_over_e: boundAnyNumber,
    };
  },
};
