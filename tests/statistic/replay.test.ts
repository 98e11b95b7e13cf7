import { describe, expect, it } from 'vitest';
import { erlangWait } from '../../src/statistic/queue/erlang.js';
import { generalWait } from '../../src/statistic/queue/general.js';
import { replayWaits } from '../../src/statistic/queue/replay.js';
import { randomFrom } from '../../src/statistic/random.js';
import cases from '../reference/statistics.json' with { type: 'json' };

const random = randomFrom(20);
const exponential = (mean: number): number => -Math.log(1 - random.uniform()) * mean;

function streamOf(count: number, gap: () => number): Float64Array {
  let now = 0;
  return Float64Array.from({ length: count }, () => {
    now += gap();
    return now;
  });
}

/** The mean of a long run and its standard error, by means of batches. */
function longRun(waits: Float64Array): { mean: number; error: number } {
  const batches = 40;
  const size = waits.length / batches;
  const means = Array.from(
    { length: batches },
    (_, at) => waits.subarray(at * size, (at + 1) * size).reduce((sum, wait) => sum + wait, 0) / size,
  );
  const mean = means.reduce((sum, own) => sum + own, 0) / batches;
  const spread = means.reduce((sum, own) => sum + (own - mean) ** 2, 0) / (batches - 1);
  return { mean, error: Math.sqrt(spread / batches) };
}

describe('waits by replaying arrivals', () => {
  it('are those of a single channel worked by hand', () => {
    // Banks J, Carson JS, Nelson BL, Nicol DM, Discrete-Event System Simulation, grocery checkout: twenty customers wait
    // 56 minutes together, 2.8 on average. Digits from memory.
    const gaps = [0, 8, 6, 1, 8, 3, 8, 7, 2, 3, 1, 1, 5, 6, 3, 8, 1, 2, 4, 5];
    const services = [4, 1, 4, 3, 2, 4, 5, 4, 5, 3, 3, 5, 4, 1, 5, 4, 3, 3, 2, 3];
    let next = 0;
    const waits = replayWaits(
      streamOf(20, () => gaps[next++]!),
      services,
      1,
    );
    expect(waits.reduce((sum, wait) => sum + wait, 0)).toBe(56);
  });

  it('go to whichever of several units is free first', () => {
    // By hand: units end at 10 and 4; the third takes the second unit at 4, the fourth the same at 6, the fifth the first.
    expect([...replayWaits([0, 0, 1, 2, 9], [10, 4, 2, 5, 1], 2)]).toEqual([0, 0, 3, 4, 1]);
    expect([...replayWaits([0, 0, 1, 2, 9], [10, 4, 2, 5, 1], 5)]).toEqual([0, 0, 0, 0, 0]);
  });

  it('are never longer with one unit more', () => {
    const arrivals = streamOf(2000, () => exponential(1));
    const services = Float64Array.from({ length: 2000 }, () => exponential(2.5));
    const [three, four] = [3, 4].map((units) => replayWaits(arrivals, services, units));
    expect(three!.every((wait, at) => four![at]! <= wait + 1e-9)).toBe(true);
  });

  // tests/reference/statistics.json: Hillier and Lieberman’s county hospital, Bronson’s problems 23.3 and 24.6.
  const published = cases.cases.filter(({ id }) =>
    ['mmc-county-1', 'mmc-county-2', 'mmc-bronson-23-3', 'mmc-bronson-24-6'].includes(id),
  );
  it.each(published)('of a Poisson stream with exponential washes are Erlang’s: $id', ({ inputs, expected }) => {
    const { lambda, mu, c } = inputs as { lambda: number; mu: number; c: number };
    const wq = (expected as { wq: number }).wq;
    expect(erlangWait(lambda, mu, c).steady?.meanWait).toBeCloseTo(wq, 8);
    const count = 400_000;
    const arrivals = streamOf(count, () => exponential(1 / lambda));
    const services = Float64Array.from({ length: count }, () => exponential(1 / mu));
    const { mean, error } = longRun(replayWaits(arrivals, services, c));
    expect(error).toBeLessThan(0.06 * wq);
    expect(Math.abs(mean - wq)).toBeLessThan(4 * error);
  });

  it('of a Poisson stream with washes of one length are half as long', () => {
    // Pollaczek and Khinchine: load² ÷ 2 (1 − load) × the service, for one server; Gross and Harris 1998, section 5.1.
    const arrivals = streamOf(400_000, () => exponential(10));
    const { mean, error } = longRun(replayWaits(arrivals, new Float64Array(400_000).fill(8), 1));
    expect(Math.abs(mean - (0.8 * 8) / (2 * 0.2))).toBeLessThan(4 * error);
  });

  it('with general times lie near the textbook’s approximation where the line is busy', () => {
    // Cachon G, Terwiesch C, Matching Supply with Demand, the call centre An-ser: a caller every 11.39 seconds, 90 seconds
    // a call with a deviation of 120, ten agents: 24.98 seconds by their formula. Digits from memory. Two moments do not
    // tell all, so the formulae are near and not exact: Allen and Cunneen’s is 23.1.
    const line = { arrivalMean: 11.39, arrivalDeviation: 11.39, serviceMean: 90, serviceDeviation: 120, servers: 10 };
    const { allenCunneen, sakasegawa } = generalWait(line);
    expect(sakasegawa).toBeCloseTo(24.98, 2);
    // Calls of two exponential kinds with that mean and deviation (balanced means).
    const squared = (120 / 90) ** 2;
    const share = (1 + Math.sqrt((squared - 1) / (squared + 1))) / 2;
    const call = () => (random.uniform() < share ? exponential(45 / share) : exponential(45 / (1 - share)));
    const arrivals = streamOf(400_000, () => exponential(11.39));
    const { mean } = longRun(replayWaits(arrivals, Float64Array.from({ length: 400_000 }, call), 10));
    expect(Math.abs(mean - allenCunneen!)).toBeLessThan(0.15 * allenCunneen!);
  });
});
