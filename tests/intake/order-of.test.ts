import fc from 'fast-check';
import { expect, test } from 'vitest';
import { orderOf } from '../../src/intake/order-of.js';

// Array.prototype.sort is stable since ECMAScript 2019, and the yardstick here.
test('numbers are put in order, and equals stay as they stood', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 9 }), { maxLength: 60 }), (numbers) => {
      const places = numbers.map((_, place) => place);
      expect([...orderOf(numbers)]).toEqual(places.sort((a, b) => numbers[a]! - numbers[b]!));
    }),
  );
});
