import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { heightFor, type Placed, type Pointed, placeLabels } from '../../../src/chart/craft/label-places.js';

const width = 500;
const apart = 36;

const labels = fc
  .array(fc.record({ x: fc.integer({ min: 1, max: width - 1 }), y: fc.integer({ min: 0, max: 400 }) }), {
    minLength: 1,
    maxLength: 36,
  })
  .map((points) => points.map(({ x, y }, at): Pointed => ({ name: `part ${at}`, x, y, lean: x })));

function placed(points: readonly Pointed[]): readonly Placed[] {
  return placeLabels(points, { width, height: Math.max(420, heightFor(points.length, apart)), apart });
}

function crossing(one: Placed, other: Placed): boolean {
  const from = one.edge === 'left' ? 0 : width;
  const side = (ax: number, ay: number, bx: number, by: number, x: number, y: number): number =>
    (bx - ax) * (y - ay) - (by - ay) * (x - ax);
  const splits = (a: Placed, b: Placed): boolean =>
    side(from, a.top, a.x, a.y, from, b.top) * side(from, a.top, a.x, a.y, b.x, b.y) < -1e-6;
  return splits(one, other) && splits(other, one);
}

describe('labels beside a drawing', () => {
  it('never stand upon one another, nor outside the frame', () => {
    fc.assert(
      fc.property(labels, (points) => {
        const height = Math.max(420, heightFor(points.length, apart));
        const all = placed(points);
        expect(all).toHaveLength(points.length);
        for (const edge of ['left', 'right']) {
          const tops = all.filter((label) => label.edge === edge).map(({ top }) => top);
          tops.sort((a, b) => a - b);
          tops.forEach((top, at) => {
            expect(top).toBeGreaterThanOrEqual(apart / 2 - 1e-9);
            expect(top).toBeLessThanOrEqual(height - apart / 2 + 1e-9);
            if (at > 0) expect(top - tops[at - 1]!).toBeGreaterThanOrEqual(apart - 1e-9);
          });
        }
      }),
      { numRuns: 200, seed: 6 },
    );
  });

  it('have leaders that do not cross', () => {
    fc.assert(
      fc.property(labels, (points) => {
        const all = placed(points);
        for (const one of all) {
          for (const other of all) {
            if (one.edge === other.edge && one.name < other.name) expect(crossing(one, other)).toBe(false);
          }
        }
      }),
      { numRuns: 200, seed: 6 },
    );
  });

  it('stand the same in whatever order they are given', () => {
    fc.assert(
      fc.property(labels, (points) => {
        const byName = (all: readonly Placed[]) => [...all].sort((a, b) => (a.name < b.name ? -1 : 1));
        expect(byName(placed([...points].reverse()))).toEqual(byName(placed(points)));
      }),
      { numRuns: 50, seed: 6 },
    );
  });

  it('stand at their points’ height where there is room', () => {
    const points = [100, 200, 300].map((y): Pointed => ({ name: `at ${y}`, x: 40, y, lean: 40 }));
    expect(
      placed(points)
        .filter(({ edge }) => edge === 'left')
        .map(({ top, y }) => top - y),
    ).toEqual([0, 0, 0]);
  });
});
