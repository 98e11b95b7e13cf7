import { poissonRate } from '../../../src/statistic/poisson.js';
import { type QuantileType, quantile } from '../../../src/statistic/quantile.js';
import { summary } from '../../../src/statistic/summary.js';
import type { Method } from '../inputs.js';

const TYPES: readonly QuantileType[] = [1, 2, 3, 4, 5, 6, 7, 8, 9];

export const counts: Readonly<Record<string, Method>> = {
  'poisson.exact': (inputs) => {
    const exposure = inputs.has('exposure') ? inputs.number('exposure') : 1;
    const { value, interval } = poissonRate(inputs.number('x'), exposure, inputs.confidence);
    return { rate: value, lower: interval?.low, upper: interval?.high };
  },
  'quantile.hyndman_fan': (inputs) => {
    const sorted = [...inputs.numbers('x')].sort((a, b) => a - b);
    const probs = inputs.numbers('probs');
    return Object.fromEntries(TYPES.map((type) => [`type${type}`, probs.map((p) => quantile(sorted, p, type))]));
  },
  'summary.univariate': (inputs) => {
    const { n, mean, standardDeviation, autocorrelation } = summary(inputs.numbers('x'));
    return { n, mean, sd: standardDeviation, autocorr_lag1: autocorrelation };
  },
};
