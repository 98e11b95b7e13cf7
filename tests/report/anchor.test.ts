import fc from 'fast-check';
import { expect, test } from 'vitest';
import { anchor, anchorOfWords } from '../../src/report/anchor.js';

test('an ordinary name gives its words, joined by hyphens', () => {
  expect(anchor('account', 'interception')).toBe('account-interception');
  expect(anchor('sheet', 'by_station')).toBe('sheet-by-station');
  expect(anchor('chart', 'dots-by-station-rate-2')).toBe('chart-dots-by-station-rate-2');
  expect(anchorOfWords('section', 'What was found, and where?')).toBe('section-what-was-found-and-where');
});

test('names that differ have addresses that differ', () => {
  const alike = ['a_b', 'a__b', 'a_b_', '_a_b', 'A_b', 'à_b', 'a_B', 'данные', 'вода', '_', '__'];
  expect(new Set(alike.map((name) => anchor('sheet', name))).size).toBe(alike.length);
  // What the language takes for a name; few letters, so that many of them are nearly alike.
  const name = fc.stringMatching(/^[abAÀà_][abAÀà_1]{0,6}$/u);
  fc.assert(
    fc.property(name, name, (one, other) => {
      expect(anchor('sheet', one) === anchor('sheet', other)).toBe(one === other);
    }),
    { seed: 20261130, numRuns: 2000 },
  );
});

test('an address holds nothing that a link would have to escape', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme' }), (name) => {
      expect(anchor('sheet', name)).toMatch(/^sheet-[a-z0-9-]+$/);
    }),
    { seed: 20261130 },
  );
});
