import { expect, test } from 'vitest';
import { showFraction, showNumber, showResult } from '../../src/notebook/shown.js';
import { number } from '../report/sample-notebook.js';

// Common practice of journals, no single source: P below 0.001 is told as that, never as nought.
test('a P value is never shown as nought', () => {
  expect(showNumber(0.00049, 'P value', '')).toBe('under 0.001');
  expect(showNumber(0, 'P value', '')).toBe('under 0.001');
  expect(showNumber(0.0005, 'P value', '')).toBe('0.001');
  expect(showNumber(1, 'P value', '')).toBe('1.000');
  expect(showResult(number(0.00001), 'P value')).toBe('under 0.001');
});

test('other small numbers are shown as they round', () => {
  expect(showNumber(0.00049, 'three decimals', '')).toBe('0.000');
});

test('what a ratio is made of is written as exactly as it must be read, and is called no part of one another', () => {
  // One interception where 0.293571474 were expected is 3.41 by ratio; written in whole numbers it would be 1 of 0.
  expect(showFraction({ ...number(3.41), numerator: 1, denominator: 0.293571474, isRatio: true })).toBe('1 by 0.29');
  expect(showFraction({ ...number(12), numerator: 12, denominator: 0.00237, isRatio: true })).toBe('12 by 0.0024');
  expect(showFraction({ ...number(4), numerator: 4, denominator: 1, isRatio: true })).toBe('4 by 1');
  expect(showFraction({ ...number(0.5), numerator: 31, denominator: 24_010 })).toBe('31 of 24,010');
});
