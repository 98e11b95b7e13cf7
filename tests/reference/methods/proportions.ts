import type { Interval } from '../../../src/statistic/estimate.js';
import { agrestiCoullUncut } from '../../../src/statistic/proportion/agresti-coull.js';
import { clopperPearson } from '../../../src/statistic/proportion/clopper-pearson.js';
import { proportionEstimate } from '../../../src/statistic/proportion/estimate.js';
import { exactTest } from '../../../src/statistic/proportion/exact-test.js';
import { jeffreys } from '../../../src/statistic/proportion/jeffreys.js';
import { midP } from '../../../src/statistic/proportion/mid-p.js';
import { wilson, wilsonContinuity } from '../../../src/statistic/proportion/wilson.js';
import { zeroUpper } from '../../../src/statistic/proportion/zero-cases.js';
import type { Inputs, Method } from '../inputs.js';

function withLimits(limits: (x: number, n: number, confidence: number) => Interval): Method {
  return (inputs: Inputs) => {
    const x = inputs.number('x');
    const n = inputs.number('n');
    const { low, high } = limits(x, n, inputs.confidence);
    return { estimate: proportionEstimate({ cases: x, trials: n }).value, lower: low, upper: high };
  };
}

export const proportions: Readonly<Record<string, Method>> = {
  'binom.wilson': withLimits(wilson),
  'binom.wilson_cc': withLimits(wilsonContinuity),
  'binom.clopper_pearson': withLimits(clopperPearson),
  'binom.midp': withLimits(midP),
  'binom.jeffreys': withLimits(jeffreys),
  'binom.agresti_coull': (inputs) => {
    const { estimate, lower, upper } = withLimits(agrestiCoullUncut)(inputs);
    return { estimate, lower_untruncated: lower, upper_untruncated: upper };
  },
  'binom.zero_upper': (inputs) => {
    const { interval, ruleOfThree } = zeroUpper(inputs.number('n'), inputs.confidence);
    return { exact_one_sided: interval.high, rule_of_three: ruleOfThree };
  },
  'binom.exact_test': (inputs) => {
    const { lower, upper } = withLimits(clopperPearson)(inputs);
    return { p_value: exactTest(inputs.number('x'), inputs.number('n'), inputs.number('p0')), lower, upper };
  },
};
