import { evaluate } from '../../../src/formula/evaluate.js';
import { functionNames } from '../../../src/formula/functions/functions.js';
import { parseFormula } from '../../../src/formula/parse.js';
import { resultOf } from '../../../src/formula/result-of.js';
import type { Random } from '../../../src/statistic/random.js';
import { environmentOf, problemsOf } from '../../formula/ask.js';
import { smallBook } from '../../formula/small-book.js';
import { hostilePieces } from '../spoil.js';
import { hold, type Kind, oneOf } from '../trial.js';

const environment = { ...environmentOf(smallBook), resamples: { count: 10, seed: 1 } };
const words = [
  ...[
    'count',
    'inspections',
    'where',
    'outcome',
    'is',
    '"intercepted"',
    'and',
    'or',
    'not',
    'in',
    'of',
    'between',
    'missing',
  ],
  ...[
    '(',
    ')',
    ',',
    '+',
    '-',
    '*',
    '/',
    '<',
    '>=',
    '2',
    '0',
    '1e308',
    '"2025-05-01"',
    'length_ft',
    'station',
    'if',
    'here',
  ],
  ...functionNames(),
];

/** One of the shapes in which a formula may go deep or long. */
function deep(random: Random, depth: number): string {
  const around = (open: string, inner: string, close: string) => open.repeat(depth) + inner + close.repeat(depth);
  return oneOf(random, [
    () => around('(', '1', ')'),
    () => around('-', '1', ''),
    () => around('not ', 'station is "North"', ''),
    () => around('abs(', 'count(inspections)', ')'),
    () => around('if(1 > 0, ', '1', ', 2)'),
    () => `1${' + 1'.repeat(depth)}`,
    () => `count(inspections where ${'station is "North" and '.repeat(depth)}station is "South")`,
    () => `count(inspections where station in (${'"North", '.repeat(depth)}"x"))`,
    () => around('count(inspections where minutes > ', '1', ')'),
    () => '('.repeat(depth),
    () => `"${'x'.repeat(depth)}`,
    () => `${'a'.repeat(depth)} of ${'b'.repeat(depth)}`,
  ])();
}

/** Formulas of scrambled words, and formulas that go deeper and on longer than any person writes. */
export const formulasKind: Kind = {
  name: 'formulas',
  counted: 'values',
  patience: 30,
  pace: 900,
  run: async (random) => {
    const isDeep = random.below(20) === 0;
    const scrambled = () =>
      Array.from({ length: 1 + random.below(14) }, () => oneOf(random, random.below(8) === 0 ? hostilePieces : words));
    const text = isDeep ? deep(random, oneOf(random, [10, 59, 61, 200, 2000, 100_000])) : scrambled().join(' ');
    const parsed = parseFormula(text, { file: 'torture.md', line: 1, column: 1 });
    if (!('tree' in parsed)) {
      hold(parsed.problems.length > 0, () => 'neither a formula nor a problem');
      return { ended: 'refused', accounted: 0 };
    }
    if (problemsOf(text, environment).length > 0) return { ended: 'refused', accounted: 0 };
    const result = resultOf(evaluate(parsed.tree, environment));
    if (result.kind !== 'number') return { ended: 'taken in', accounted: 1 };
    const { value, interval, why } = result;
    hold(value !== null || why !== null, () => `${text} has no value and no reason`);
    for (const number of [value, interval?.low ?? null, interval?.high ?? null]) {
      hold(number === null || Number.isFinite(number), () => `${text} gives ${number}`);
    }
    return { ended: 'taken in', accounted: 1 };
  },
};
