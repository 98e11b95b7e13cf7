import { checkFormula } from '../../src/formula/check.js';
import { type Environment, emptyCache, type Group } from '../../src/formula/environment.js';
import { evaluate } from '../../src/formula/evaluate.js';
import { parseFormula } from '../../src/formula/parse.js';
import type { NumberResult, Result } from '../../src/formula/result.js';
import { resultOf } from '../../src/formula/result-of.js';
import type { Formula } from '../../src/formula/tree.js';
import type { Evaluated } from '../../src/formula/value/evaluated.js';
import { kindOfValue } from '../../src/formula/value/kind-of-value.js';
import type { Problem } from '../../src/problem/problem.js';
import type { Book } from '../../src/record/book.js';
import { smallBook } from './small-book.js';

const at = { file: 'season.md', line: 12, column: 5 };

export type Known = ReadonlyMap<string, Evaluated>;

export function environmentOf(
  book: Book = smallBook,
  known: Known = new Map(),
  group: Group | null = null,
): Environment {
  return { book, known, group, resamples: { count: 2000, seed: 1 }, cache: emptyCache() };
}

export function read(text: string): Formula {
  const parsed = parseFormula(text, at);
  if ('problems' in parsed) throw new Error(parsed.problems.map(({ wanted }) => wanted).join('; '));
  return parsed.tree;
}

/** The problems of reading a formula or, when it can be read, of checking it. */
export function problemsOf(text: string, environment: Environment = environmentOf()): readonly Problem[] {
  const parsed = parseFormula(text, at);
  if ('problems' in parsed) return parsed.problems;
  const { book, known, group } = environment;
  const kinds = new Map([...known].map(([name, value]) => [name, kindOfValue(value)]));
  const name = group?.sheet === undefined ? {} : { name: group.sheet };
  const sheet = group === null ? null : { ...name, table: group.table, keys: [...group.keys.keys()] };
  const definitions = environment.definitions === undefined ? {} : { definitions: environment.definitions };
  return checkFormula(parsed.tree, { book, known: kinds, sheet, ...definitions }).problems;
}

/** The value of a formula, after it has been checked; a problem fails the test with its words. */
export function valueOfFormula(text: string, environment: Environment = environmentOf()): Evaluated {
  const problems = problemsOf(text, environment);
  if (problems.length > 0) {
    throw new Error(problems.map(({ code, seen, wanted }) => `${code} "${seen}": wanted ${wanted}`).join('\n'));
  }
  return evaluate(read(text), environment);
}

export function ask(text: string, environment: Environment = environmentOf()): Result {
  return resultOf(valueOfFormula(text, environment));
}

export function askNumber(text: string, environment: Environment = environmentOf()): NumberResult {
  const result = ask(text, environment);
  if (result.kind !== 'number') throw new Error(`${text} gives ${result.kind}`);
  return result;
}
