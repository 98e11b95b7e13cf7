import { expect, test } from 'vitest';
import { computedNotebook } from '../../src/library/computed-notebook.js';
import { smallBook } from '../formula/small-book.js';

const text = `# Small

| input | value | unit | source |
|---|---|---|---|
| least | 1 | | the test |

| figure | formula |
|---|---|
| weighed | count(inspections) * least |
`;

test('an input of another name than the notebook has is a problem, and one that it has is taken', () => {
  const computed = computedNotebook({ name: 'small.md', text, inputs: { least: '3' } }, smallBook);
  expect(computed.figures?.get('weighed')?.result).toMatchObject({ value: 24 });
  const { problems, figures } = computedNotebook({ name: 'small.md', text, inputs: { lest: '3' } }, smallBook);
  expect(figures).toBeUndefined();
  expect(problems).toMatchObject([{ code: 'unknown-choice', seen: 'lest', remedy: 'Did you mean "least"?' }]);
});
