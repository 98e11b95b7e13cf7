import { expect, test } from 'vitest';
import { randomStream } from '../../datasets/quillwater/generate/random.js';
import { clustering } from '../../datasets/quillwater/truth.js';
import { proportionEstimate } from '../../src/statistic/proportion/estimate.js';

/**
 * Seasons of 200 station-days with 5 to 60 craft each. A day multiplies the share by a gamma draw of mean 1 and the
 * demo's shape, or by 1 where craft are independent. The true share is the parameter.
 */
function coverage(share: number, clustered: boolean, seasons: number): { default: number; unclustered: number } {
  const random = randomStream(7, `${share} ${clustered}`);
  const held = { default: 0, unclustered: 0 };
  for (let season = 0; season < seasons; season++) {
    const trials = Array.from({ length: 200 }, () => 5 + random.below(56));
    const cases = trials.map((n) => {
      const chance = share * (clustered ? random.gammaOfMeanOne(clustering) : 1);
      let count = 0;
      for (let i = 0; i < n; i++) if (random.chance(chance)) count++;
      return count;
    });
    const counted = { cases: cases.reduce((a, b) => a + b, 0), trials: trials.reduce((a, b) => a + b, 0) };
    const holds = ({ interval }: ReturnType<typeof proportionEstimate>): boolean =>
      interval !== null && (interval.low ?? 0) <= share && share <= (interval.high ?? 1);
    if (holds(proportionEstimate({ ...counted, clusters: { cases, trials } }))) held.default++;
    if (holds(proportionEstimate(counted))) held.unclustered++;
  }
  return { default: held.default / seasons, unclustered: held.unclustered / seasons };
}

// 95 % is what the interval says (Korn and Graubard 1998); two standard errors of 2,000 seasons are 1 %.
test.each([0.001, 0.005, 0.02])(
  'a share of %d is held in at least 94 of 100 seasons, clustered as the demo or not',
  (share) => {
    for (const clustered of [false, true]) {
      const held = coverage(share, clustered, 2000);
      expect(held.default).toBeGreaterThanOrEqual(0.94);
    }
    expect(coverage(share, false, 2000).unclustered).toBeGreaterThanOrEqual(0.94);
  },
);
