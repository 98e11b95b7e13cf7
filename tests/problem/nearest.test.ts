import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { editDistance } from '../../src/problem/edit-distance.js';
import { nearestName, nearestNames } from '../../src/problem/nearest.js';

describe('the distance of two words', () => {
  // The four kinds of slip are Damerau's (1964). `kitten` and `CA` are the textbook pairs, quoted from memory:
  // CA to ABC takes 3 where no letters are touched twice, and 2 where they may be.
  test.each([
    ['', '', 0],
    ['', 'abc', 3],
    ['name', 'nmae', 1],
    ['table', 'tabel', 1],
    ['kitten', 'sitting', 3],
    ['CA', 'ABC', 3],
    ['abcd', 'badc', 2],
    ['bilge', 'bilg', 1],
  ])('of "%s" and "%s" is %i', (one, other, slips) => {
    expect(editDistance(one, other)).toBe(slips);
  });

  test('is the same both ways, nothing only for equal words, and never more than the longer word', () => {
    const word = fc.string({ maxLength: 8, unit: fc.constantFrom('a', 'b', 'c', 'é') });
    fc.assert(
      fc.property(word, word, (one, other) => {
        const slips = editDistance(one, other);
        expect(slips).toBe(editDistance(other, one));
        expect(slips === 0).toBe(one === other);
        expect(slips).toBeLessThanOrEqual(Math.max(one.length, other.length));
      }),
    );
  });

  test('is one for any two neighbours swapped', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.constantFrom(...'abcdefgh'), { minLength: 2 }), fc.nat(), (letters, where) => {
        const at = where % (letters.length - 1);
        const swapped = [...letters];
        [swapped[at], swapped[at + 1]] = [letters[at + 1]!, letters[at]!];
        expect(editDistance(letters.join(''), swapped.join(''))).toBe(1);
      }),
    );
  });
});

test('a name with two letters swapped is offered, however short', () => {
  expect(nearestName('nmae', ['name', 'unit', 'mean'])).toBe('name');
  expect(nearestName('tabel', ['table', 'label2'])).toBe('table');
  expect(nearestName('ON', ['NO', 'YES'])).toBe('NO');
});

test('a name too far from all others gets no guess', () => {
  expect(nearestName('hull', ['transom', 'bilge'])).toBe(null);
  expect(nearestName('x', [])).toBe(null);
});

test('of two as near, the first is offered', () => {
  expect(nearestName('PONS', ['PONT', 'POND'])).toBe('PONT');
});

test('several near names are offered, the nearest first', () => {
  expect(nearestNames('PONT', ['POND', 'SAIL', 'PONTOON', 'PONT', 'PINT'], 3)).toEqual(['PONT', 'POND', 'PINT']);
  expect(nearestNames('PONT', ['SAIL'], 3)).toEqual([]);
});
