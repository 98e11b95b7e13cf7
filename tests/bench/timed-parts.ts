// Times parts of the work within one process, after one run to warm up. Words: the folder of the built program, a store, and
// the part. Prints the median of five in milliseconds.
import { pathToFileURL } from 'node:url';
import type { resampledRanks } from '../../src/statistic/resample/ranks.js';
import type { readStore } from '../../src/store/read-store.js';
import { median } from './measured-run.js';

const [built, store, part] = process.argv.slice(2) as [string, string, string];
const load = (path: string): Promise<unknown> => import(pathToFileURL(`${built}/${path}`).href);

/** 50,000 fouled craft × 30 parts, each craft fouled on three at most, in one stratum; the ranks of all parts, 2,000 times. */
async function ranks(): Promise<() => void> {
  const { resampledRanks: rank } = (await load('statistic/resample/ranks.js')) as {
    resampledRanks: typeof resampledRanks;
  };
  const craft = 50_000;
  const patterns = new Map<string, number>();
  const patternOf = Array.from({ length: craft }, (_, at) => {
    const parts = [at % 30, (at * 7) % 30, (at * at) % 30].slice(0, 1 + (at % 3));
    const name = [...new Set(parts)].sort((a, b) => a - b).join(' ');
    if (!patterns.has(name)) patterns.set(name, patterns.size);
    return patterns.get(name)!;
  });
  const counted = [...patterns.keys()].map((name) => {
    const items = name.split(' ').map(Number);
    return { items, counts: items.map(() => 1) };
  });
  const units = { stratumOf: new Uint8Array(craft), patternOf, patterns: counted, items: 30 };
  return () => rank(units, 5, 2000, 1);
}

async function reading(): Promise<() => Promise<void>> {
  const { readStore: read } = (await load('store/read-store.js')) as { readStore: typeof readStore };
  return async () => {
    const season = await read(store);
    if ('problems' in season) throw new Error(JSON.stringify(season.problems));
  };
}

const work = part === 'ranks' ? await ranks() : await reading();
const times: number[] = [];
for (let run = 0; run < 6; run++) {
  const started = performance.now();
  await work();
  times.push(performance.now() - started);
}
process.stdout.write(`${median(times.slice(1))}\n`);
