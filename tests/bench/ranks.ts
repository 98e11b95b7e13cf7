// 2,000 resamples of ranks over 50,000 fouled craft and 30 parts: `npx tsx tests/bench/ranks.ts`, beside
// `Rscript tests/bench/ranks.R`, which draws from the same law. Whole runs, the median of five.
import { randomFrom } from '../../src/statistic/random.js';
import { resampledRanks } from '../../src/statistic/resample/ranks.js';

const [craft, parts, resamples] = [50_000, 30, 2000];
const random = randomFrom(5);
const numberOf = new Map<string, number>();
const patterns: { items: number[]; counts: number[] }[] = [];
const patternOf = Uint32Array.from({ length: craft }, () => {
  const items = Array.from({ length: parts }, (_, at) => at).filter(
    (at) => random.uniform() < 0.02 + 0.2 * Math.exp(-at / 5),
  );
  const key = items.join();
  if (!numberOf.has(key)) {
    numberOf.set(key, patterns.length);
    patterns.push({ items, counts: items.map(() => 1) });
  }
  return numberOf.get(key)!;
});
const units = { stratumOf: new Uint32Array(craft), patternOf, patterns, items: parts };
const times = Array.from({ length: 5 }, () => {
  const start = performance.now();
  resampledRanks(units, 10, resamples, 1);
  return performance.now() - start;
}).sort((a, b) => a - b);
console.log(`${(times[2]! / 1000).toFixed(2)} s, ${patterns.length} patterns of ${craft} craft`);
