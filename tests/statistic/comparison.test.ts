import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Compared } from '../../src/statistic/compared.js';
import { agrestiCaffo } from '../../src/statistic/difference/agresti-caffo.js';
import { miettinenNurminenDifference } from '../../src/statistic/difference/miettinen-nurminen.js';
import { newcombeDifference } from '../../src/statistic/difference/newcombe.js';
import { rateRatio } from '../../src/statistic/ratio/rates.js';
import { koopmanRatio, miettinenNurminenRatio } from '../../src/statistic/ratio/score.js';
import { katzRatio, woolfOddsRatio } from '../../src/statistic/ratio/wald.js';

type Compare = (x1: number, n1: number, x2: number, n2: number, confidence?: number) => Compared;

const differences: Readonly<Record<string, Compare>> = {
  newcombeDifference,
  miettinenNurminenDifference,
  agrestiCaffo,
};
const ratios: Readonly<Record<string, Compare>> = {
  katzRatio,
  woolfOddsRatio,
  koopmanRatio,
  miettinenNurminenRatio,
  rateRatio,
};

/** Two groups, each with at least one case and one other, so that every method has both limits. */
const group = fc.tuple(fc.integer({ min: 1, max: 300 }), fc.integer({ min: 1, max: 3000 }));
const groups = fc.tuple(group, group).map(([[x1, y1], [x2, y2]]) => [x1, x1 + y1, x2, x2 + y2] as const);

function limits({ value, interval }: Compared): readonly [number, number, number] {
  if (value === null || interval === null || interval.low === null || interval.high === null) {
    throw new Error('a limit is missing');
  }
  return [interval.low, value, interval.high];
}

describe.each(Object.entries(differences))('%s', (name, compare) => {
  it('changes sign when the groups change places', () => {
    fc.assert(
      fc.property(groups, ([x1, n1, x2, n2]) => {
        const [low, value, high] = limits(compare(x1, n1, x2, n2));
        const swapped = limits(compare(x2, n2, x1, n1));
        [-high, -value, -low].forEach((wanted, i) => {
          expect(swapped[i]).toBeCloseTo(wanted, 10);
        });
      }),
    );
  });

  it('widens with confidence and stays within −1 and 1', () => {
    fc.assert(
      fc.property(groups, ([x1, n1, x2, n2]) => {
        const [low90, , high90] = limits(compare(x1, n1, x2, n2, 0.9));
        const [low99, , high99] = limits(compare(x1, n1, x2, n2, 0.99));
        expect(low99).toBeLessThanOrEqual(low90);
        expect(high99).toBeGreaterThanOrEqual(high90);
        expect(low99).toBeGreaterThanOrEqual(-1);
        expect(high99).toBeLessThanOrEqual(1);
      }),
    );
  });

  it(`has no value without trials in a group (${name})`, () => {
    expect(compare(0, 0, 1, 5)).toMatchObject({ value: null, interval: null });
  });
});

describe.each(Object.entries(ratios))('%s', (_, compare) => {
  it('contains its value and turns over when the groups change places', () => {
    fc.assert(
      fc.property(groups, ([x1, n1, x2, n2]) => {
        const [low, value, high] = limits(compare(x1, n1, x2, n2));
        expect(low).toBeLessThanOrEqual(value);
        expect(high).toBeGreaterThanOrEqual(value);
        const swapped = limits(compare(x2, n2, x1, n1));
        [1 / high, 1 / value, 1 / low].forEach((wanted, i) => {
          expect((swapped[i] ?? 0) / wanted).toBeCloseTo(1, 8);
        });
      }),
    );
  });

  it('without cases in the second group there is no value and no upper limit', () => {
    const { value, interval } = compare(5, 410, 0, 380);
    expect([value, interval?.high ?? null]).toEqual([null, null]);
  });
});
