import { expect, test } from 'vitest';
import { scoreOf, toldChange } from './score.js';
import { declaredBy, inPlaceOfRunner } from './small-runner.js';

test('a change is told by its place and on one line', () => {
  const source = 'const a = 1;\nif (a > 0) {\n  b();\n}\n';
  const change = (start: readonly [number, number], end: readonly [number, number], replacement: string) => {
    const place = ([line, column]: readonly [number, number]) => ({ line, column });
    return { id: '1', fileName: '', replacement, location: { start: place(start), end: place(end) } };
  };
  expect(toldChange('a.ts', source, change([1, 4], [1, 9], 'a >= 0'))).toBe('a.ts:2:5 a > 0 → a >= 0');
  expect(toldChange('a.ts', source, change([1, 11], [3, 1], '{}'))).toBe('a.ts:2:12 { b(); } → {}');
});

test('what nothing runs is missed too', () => {
  expect(scoreOf(['noticed', 'missed', 'unrun', 'too long', 'noticed'])).toEqual({
    all: 5,
    noticed: 2,
    tooLong: 1,
    missed: 2,
    unrun: 1,
  });
});

test('tests are gathered with their groups and rows, prepared for, and fail where an expectation does', async () => {
  const { describe, it, beforeAll, expect: inPlace } = inPlaceOfRunner;
  let ready = false;
  const tests = await declaredBy(() => {
    beforeAll(async () => {
      ready = await Promise.resolve(true);
    });
    describe('group', () => {
      it.each([
        [1, 2],
        [3, 4],
      ])('%d below %d', (one, other) => {
        inPlace(one).toBeLessThan(other);
      });
      it('wrong', { timeout: 3 }, () => inPlace({ a: 1 }).toMatchObject({ a: inPlace.any(String) }));
    });
    describe.each(['x'])('of %s', (letter) => {
      it('waits', async () => inPlace(await Promise.resolve(letter)).toBe('y'));
    });
  });
  expect(ready).toBe(true);
  const outcomes = tests.map(async ({ run }) => {
    try {
      await run();
      return 'held';
    } catch {
      return 'failed';
    }
  });
  expect(await Promise.all(outcomes)).toEqual(['held', 'held', 'failed', 'failed']);
  expect(tests.map(({ name }) => name.split(' › ')[0])).toEqual(['group', 'group', 'group', 'of %s (1)']);
});
