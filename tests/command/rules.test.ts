import { expect, test } from 'vitest';
import { rules } from '../../src/intake/rules/rules.js';
import { rampbook } from './run.js';

test('every kind of problem is printed from the table of rules, or those asked for', () => {
  const all = rampbook(['rules']);
  expect(all.exitCode).toBe(0);
  for (const { code, meaning, remedy } of rules) {
    expect(all.out).toContain(`${code}\n  ${meaning}.`);
    expect(all.out).toContain(remedy);
  }
  const one = rampbook(['rules', 'one-side-only']);
  expect(one.out).toContain('a crosswalk may set: sets aside, not checked');
  expect(one.out).not.toContain('not-a-number');
  expect(JSON.parse(rampbook(['rules', 'over-long', '--json']).out)).toEqual(
    rules.filter(({ code }) => code === 'over-long'),
  );
});

test('a code that no rule has is told with the nearest known one', () => {
  const asked = rampbook(['rules', 'over-lnog']);
  expect([asked.exitCode, asked.err]).toEqual([1, 'no rule has the code "over-lnog". Did you mean "over-long"?\n']);
});
