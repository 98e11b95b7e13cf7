import type { Compared } from '../../../src/statistic/compared.js';
import { agrestiCaffo } from '../../../src/statistic/difference/agresti-caffo.js';
import { miettinenNurminenDifference } from '../../../src/statistic/difference/miettinen-nurminen.js';
import { newcombeDifference } from '../../../src/statistic/difference/newcombe.js';
import { costPerEvent } from '../../../src/statistic/ratio/cost-per-event.js';
import { fiellerRatio } from '../../../src/statistic/ratio/fieller.js';
import { rateRatio } from '../../../src/statistic/ratio/rates.js';
import { koopmanRatio, miettinenNurminenRatio } from '../../../src/statistic/ratio/score.js';
import { katzRatio, woolfOddsRatio } from '../../../src/statistic/ratio/wald.js';
import type { Method } from '../inputs.js';

type Comparison<Result extends Compared> = (
  x1: number,
  n1: number,
  x2: number,
  n2: number,
  confidence: number,
) => Result;

function two<Result extends Compared>(
  compare: Comparison<Result>,
  also: (result: Result) => object = () => ({}),
): Method {
  return (inputs) => {
    const [x1, n1, x2, n2] = ['x1', 'n1', 'x2', 'n2'].map((name) => inputs.number(name)) as [
      number,
      number,
      number,
      number,
    ];
    const result = compare(x1, n1, x2, n2, inputs.confidence);
    const { value, interval } = result;
    return { estimate: value, lower: interval?.low ?? null, upper: interval?.high ?? null, ...also(result) };
  };
}

export const comparisons: Readonly<Record<string, Method>> = {
  'diffprop.newcombe10': two(newcombeDifference),
  'diffprop.miettinen_nurminen': two(miettinenNurminenDifference),
  'diffprop.agresti_caffo': two(agrestiCaffo),
  'rr.katz_log': two(katzRatio, ({ logStandardError }) => ({ se_log: logStandardError })),
  'or.woolf': two(woolfOddsRatio, ({ logStandardError }) => ({ se_log: logStandardError })),
  'rr.koopman_score': two(koopmanRatio),
  'rr.miettinen_nurminen': two(miettinenNurminenRatio),
  'poisson.rate_ratio': (inputs) => {
    const [x1, t1, x2, t2] = ['x1', 't1', 'x2', 't2'].map((name) => inputs.number(name)) as [
      number,
      number,
      number,
      number,
    ];
    const { value, interval, p } = rateRatio(x1, t1, x2, t2, inputs.confidence);
    return { ratio: value, lower: interval?.low ?? null, upper: interval?.high ?? null, p };
  },
  'ratio.fieller': (inputs) => {
    const result = fiellerRatio(inputs.numbers('y'), inputs.numbers('x'), inputs.confidence);
    return {
      ratio: result.value,
      se_delta: result.standardError,
      lower_fieller: result.interval?.low ?? null,
      upper_fieller: result.interval?.high ?? null,
      se_jackknife: result.jackknifeError,
    };
  },
  'ratio.cost_per_event': (inputs) => {
    const { value, interval, lowerIfNone } = costPerEvent(inputs.number('cost'), inputs.number('x'), inputs.confidence);
    return { cost_per_event: value, lower: interval.low, upper: interval.high, lower_one_sided_if_zero: lowerIfNone };
  },
};
