import { expect, test } from 'vitest';
import { showNumber, showResult } from '../../src/notebook/shown.js';
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
