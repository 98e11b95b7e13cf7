import fc from 'fast-check';
import { expect, test } from 'vitest';
import { NumberPacker, unpackNumbers } from '../../../src/report/carried/packed-numbers.js';

const whole = fc.integer({ min: -0x8000_0000, max: 0x7fff_ffff });
const lists = fc.oneof(
  fc.array(fc.integer({ min: 0, max: 3 })),
  fc.array(fc.integer({ min: 5, max: 260 })),
  fc.array(whole),
  fc.array(fc.double()),
  fc.array(fc.nat(200)).map((steps) => steps.map((_, at) => steps.slice(0, at + 1).reduce((sum, one) => sum + one, 0))),
);

test('numbers come back as they were packed, one list after another', () => {
  fc.assert(
    fc.property(fc.array(lists, { maxLength: 5 }), (all) => {
      const packer = new NumberPacker();
      const packed = all.map((numbers) => packer.pack(numbers));
      const bytes = packer.bytes();
      const back = packed.map((one) => [...unpackNumbers(one, bytes)]);
      all.forEach((numbers, at) => {
        expect(back[at]!.length).toBe(numbers.length);
        for (const [place, number] of numbers.entries()) expect(Object.is(back[at]![place], number)).toBe(true);
      });
    }),
  );
});

test('small whole numbers take a quarter of a byte, and counted ones a byte a step', () => {
  const size = (numbers: readonly number[]): number => {
    const packer = new NumberPacker();
    packer.pack(numbers);
    return packer.bytes().length;
  };
  expect(size(Array.from({ length: 400 }, (_, at) => at % 4))).toBe(100);
  expect(size(Array.from({ length: 400 }, (_, at) => 100_000 + at * (at % 2)))).toBeGreaterThan(400);
  expect(size(Array.from({ length: 400 }, (_, at) => at * 7))).toBe(400);
});
