import { expect, test } from 'vitest';
import { resultEntries } from '../../src/report/result-entries.js';
import { number } from './sample-notebook.js';

test('an account tells what a ratio was made of as exactly as the table does', () => {
  const ratio = { ...number(3.41), numerator: 1, denominator: 0.293571474, isRatio: true } as const;
  expect(resultEntries(ratio, '')).toEqual(
    expect.arrayContaining([
      ['Cases (numerator)', '1'],
      ['Out of (denominator)', '0.29'],
    ]),
  );
});
