import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseFormula } from '../../src/formula/parse.js';
import { type Node, namesIn } from '../../src/formula/tree.js';
import { problemsOf, read } from './ask.js';

const at = { file: 'season.md', line: 12, column: 5 };

/** A tree as text with every pair in brackets, so that what binds closer can be seen. */
function bracketed(node: Node): string {
  switch (node.kind) {
    case 'number':
      return String(node.value);
    case 'text':
      return JSON.stringify(node.text);
    case 'name':
      return node.name;
    case 'call':
      return `${node.name}(${node.arguments.map(bracketed).join(', ')})`;
    case 'negative':
      return `[- ${bracketed(node.of)}]`;
    case 'not':
      return `[not ${bracketed(node.of)}]`;
    case 'missing':
      return `[${bracketed(node.of)} is ${node.negated ? 'not ' : ''}missing]`;
    case 'arithmetic':
    case 'comparison':
    case 'logic':
      return `[${bracketed(node.left)} ${node.operator} ${bracketed(node.right)}]`;
    case 'among':
      return `[${bracketed(node.of)} ${node.negated ? 'not ' : ''}in ${node.values.map(bracketed).join(', ')}]`;
    case 'between':
      return `[${bracketed(node.of)} between ${bracketed(node.low)} and ${bracketed(node.high)}]`;
    case 'rows': {
      const field = node.field === null ? '' : `${bracketed(node.field)} of `;
      const where = node.where === null ? '' : ` where ${bracketed(node.where)}`;
      return `{${field}${node.base?.name ?? ''}${node.here ? ' here' : ''}${where}}`;
    }
    case 'lookup':
      return `<${node.column.name} of ${node.sheet.name} for ${node.keys.map(bracketed).join(', ')}>`;
    case 'with':
      return `<${node.figure.name}${node.changes.map(({ input, value }) => ` with ${input.name} as ${bracketed(value)}`).join('')}>`;
    case 'broken':
      return '?';
  }
}

test.each([
  ['1 + 2 * 3 - 4', '[[1 + [2 * 3]] - 4]'],
  ['8 ÷ 4 × 2', '[[8 / 4] * 2]'],
  ['-a * b', '[[- a] * b]'],
  ['a is 1 or b is 2 and not c is 3', '[[a is 1] or [[b is 2] and [not [c is 3]]]]'],
  ['a between 1 and 2 and b', '[[a between 1 and 2] and b]'],
  ['a is not missing', '[a is not missing]'],
  ['a not in ("x", “y”)', '[a not in "x", "y"]'],
  ['count(where a ≤ 2)', 'count({ where [a <= 2]})'],
  ['sum(x + y of t here where z is "q""r")', 'sum({[x + y] of t here where [z is "q\\"r"]})'],
  ['inspections where season is 2025', '{inspections where [season is 2025]}'],
  ['a / b of s for k * 2', '[[a / <b of s for k>] * 2]'],
  ['a of s for (k + 1, "x") - 1', '[<a of s for [k + 1], "x"> - 1]'],
  ['f with i as -2 with j as "x" + 1', '[<f with i as [- 2] with j as "x"> + 1]'],
  ['a in watched and b', '[[a in watched] and b]'],
])('%s binds as %s', (text, expected) => {
  expect(bracketed(read(text).body)).toBe(expected);
});

test('a mistake is told at its very character', () => {
  const problems = problemsOf('count(inspections) + * 2');
  expect(problems).toHaveLength(1);
  expect(problems[0]!.place).toEqual({ file: 'season.md', line: 12, column: 5 + 21, field: null });
  expect(problems[0]!.seen).toBe('* 2'.slice(0, 1));
});

test('several mistakes are told at once, in their order, and none twice', () => {
  const problems = problemsOf('rate(1 2, where) + 5% + max(3,000, )');
  expect(problems.map(({ place }) => place.column! - 5)).toEqual([7, 15, 19, 28, 35]);
});

test('a formula nested too deep is a problem, not a crash', () => {
  const deep = `${'('.repeat(900)}1${')'.repeat(900)}`;
  expect(problemsOf(deep).map(({ code }) => code)).toEqual(['too-deep']);
  expect(problemsOf('1 + '.repeat(1000)).map(({ code }) => code)).toEqual(['too-long']);
  expect(problemsOf(`1${' + 1'.repeat(490)}`)).toEqual([]);
});

test('every name is listed once, functions are not', () => {
  expect(namesIn(read('rate(count(t where a is b), a + c)'))).toEqual(['t', 'a', 'b', 'c']);
});

const scraps = [
  'count',
  'sum',
  'rate',
  'if',
  'inspections',
  'length_ft',
  'outcome',
  'where',
  'of',
  'here',
  'is',
  'not',
  'in',
  'and',
  'or',
  'between',
  'missing',
  'for',
  'with',
  'as',
  '(',
  ')',
  ',',
  '+',
  '-',
  '*',
  '/',
  '<',
  '>=',
  '"full"',
  '"',
  '1',
  '2.5',
  '1,000',
  '5%',
  '2025-05-01',
  "'",
  '|',
  '=',
  '😀',
  'é',
  '\n',
];

test('any text gives a tree or problems with a place inside it', () => {
  const scrambled = fc.array(fc.constantFrom(...scraps), { maxLength: 30 }).map((parts) => parts.join(' '));
  fc.assert(
    fc.property(fc.oneof(scrambled, fc.string({ unit: 'binary', maxLength: 80 })), (text) => {
      const parsed = parseFormula(text, at);
      if ('tree' in parsed) return;
      expect(parsed.problems.length).toBeGreaterThan(0);
      for (const { place, wanted, remedy } of parsed.problems) {
        expect(place.line).toBeGreaterThanOrEqual(12);
        expect(place.line).toBeLessThanOrEqual(12 + text.split('\n').length - 1);
        expect(place.column).toBeGreaterThanOrEqual(1);
        expect(place.column).toBeLessThanOrEqual(5 + text.length);
        expect(wanted).not.toBe('');
        expect(remedy).not.toBe('');
      }
    }),
    { numRuns: 2000, seed: 11 },
  );
});
