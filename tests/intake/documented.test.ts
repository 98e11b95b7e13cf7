import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readCrosswalk } from '../../src/intake/read-crosswalk.js';

test('the settings that the README shows are understood, every one of them', () => {
  const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
  const shown = /## What exports may look like[\s\S]*?```yaml\n([\s\S]*?)```/.exec(readme)![1]!;
  const { problems } = readCrosswalk('README.md', `crosswalk: shown\n${shown}`);
  // It shows no whole form: what the table must have besides, and the zone of its times, is left to the reader.
  const others = problems.filter(({ code, wanted }) => {
    return code !== 'crosswalk-missing-field' && !wanted.startsWith('a time zone');
  });
  expect(others).toEqual([]);
  expect(problems.length).toBeGreaterThan(0);
});
