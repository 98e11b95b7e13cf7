import fc from 'fast-check';
import { expect, test } from 'vitest';
import { raisedTo } from '../../src/statistic/raised-to.js';

test('a base to a power is what arithmetic says, worked by hand', () => {
  expect([raisedTo(0, 0), raisedTo(0, 3), raisedTo(0, 0.5), raisedTo(7, 0), raisedTo(1, 1e300)]).toEqual([
    1, 0, 0, 1, 1,
  ]);
  // 3⁷ = 2187, 2⁻³ = 1/8, 1.5⁵ = 243/32, 10¹⁵: whole, so nothing is lost.
  expect([raisedTo(3, 7), raisedTo(2, -3), raisedTo(1.5, 5), raisedTo(10, 15)]).toEqual([2187, 0.125, 7.59375, 1e15]);
  expect(raisedTo(2, 1024)).toBe(Number.POSITIVE_INFINITY);
});

test('a power agrees with the engine’s own to ten digits', () => {
  const base = fc.double({ min: 1e-6, max: 1e3, noNaN: true });
  const exponent = fc.oneof(fc.double({ min: -30, max: 30, noNaN: true }), fc.integer({ min: -60, max: 60 }));
  fc.assert(
    fc.property(base, exponent, (of, to) => {
      const own = of ** to;
      fc.pre(own > 1e-290 && own < 1e290);
      expect(Math.abs(raisedTo(of, to) / own - 1)).toBeLessThan(1e-10);
    }),
  );
});
