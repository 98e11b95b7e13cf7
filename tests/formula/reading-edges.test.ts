import { describe, expect, test } from 'vitest';
import { dayOf } from '../../src/formula/day.js';
import { inputValue } from '../../src/formula/input-value.js';
import { parseFormula } from '../../src/formula/parse.js';
import { formulaBounds, isLanguageWord } from '../../src/formula/reader.js';
import { tokensOf } from '../../src/formula/token.js';
import { isWrittenNumber, type Node, parts } from '../../src/formula/tree.js';
import { read } from './ask.js';

const at = { file: 'season.md', line: 3, column: 9 };

/** Every node below one, itself first, as its kind and the text it spans. */
function spans(text: string, node: Node = read(text).body): readonly string[] {
  return [`${node.kind}: ${text.slice(node.offset, node.end)}`, ...parts(node).flatMap((part) => spans(text, part))];
}

describe('every part of a formula spans its own text', () => {
  test.each([
    ['a + b * 2', ['arithmetic: a + b * 2', 'name: a', 'arithmetic: b * 2', 'name: b', 'number: 2']],
    [' -a ', ['negative: -a', 'name: a']],
    ['not x is missing', ['not: not x is missing', 'missing: x is missing', 'name: x']],
    ['a is "b" or c', ['logic: a is "b" or c', 'comparison: a is "b"', 'name: a', 'text: "b"', 'name: c']],
    ['a and b and c', ['logic: a and b and c', 'logic: a and b', 'name: a', 'name: b', 'name: c']],
    ['a <= 1', ['comparison: a <= 1', 'name: a', 'number: 1']],
    ['x not in (1, "y")', ['among: x not in (1, "y")', 'name: x', 'number: 1', 'text: "y"']],
    ['x in l', ['among: x in l', 'name: x', 'name: l']],
    ['x not between 1 and y', ['between: x not between 1 and y', 'name: x', 'number: 1', 'name: y']],
    [
      'f(a, b of t here where c)',
      ['call: f(a, b of t here where c)', 'name: a', 'rows: b of t here where c', 'name: b', 'name: t', 'name: c'],
    ],
    ['f()', ['call: f()']],
    ['f(where a)', ['call: f(where a)', 'rows: where a', 'name: a']],
    ['f(here)', ['call: f(here)', 'rows: here']],
    ['f(a of here)', ['call: f(a of here)', 'rows: a of here', 'name: a']],
    ['c of s for k + 1', ['arithmetic: c of s for k + 1', 'lookup: c of s for k', 'name: s', 'name: k', 'number: 1']],
    ['c of s for (k, 1)', ['lookup: c of s for (k, 1)', 'name: s', 'name: k', 'number: 1']],
    [
      'f with a as -1 with b as c',
      ['with: f with a as -1 with b as c', 'name: f', 'name: a', 'negative: -1', 'number: 1', 'name: b', 'name: c'],
    ],
    ['(a)', ['name: a']],
  ])('%s', (text, expected) => {
    expect(spans(text)).toEqual(expected);
  });

  test('an operator spans its words', () => {
    const operator = (text: string) => {
      const { body } = read(text);
      if (!('operatorAt' in body)) throw new Error(body.kind);
      return text.slice(body.operatorAt.offset, body.operatorAt.end);
    };
    const asked = ['a is b', 'a  is  not b', 'a < b', 'a not in (1)', 'a in l', 'a not between 1 and 2', 'a ÷ b'];
    expect(asked.map(operator)).toEqual(['is', 'is  not', '<', 'not in', 'in', 'not between', '÷']);
  });

  test('a number written out is one with its sign, and nothing else is', () => {
    expect(['5', '-5', 'a', '-a', '5 + 1', '"5"'].map((text) => isWrittenNumber(read(text).body))).toEqual([
      ...[true, true, false, false, false, false],
    ]);
  });
});

describe('tokens', () => {
  const tokens = (text: string) => tokensOf({ text, at }).tokens.map(({ kind, text: meant }) => [kind, meant]);

  test('mean what they say in every spelling', () => {
    expect(tokens('a1 × _b ÷ 2.50 − ≤ ≥ <= >= < > “q "" r” "s""t" ""')).toEqual([
      ...[
        ['word', 'a1'],
        ['symbol', '*'],
        ['word', '_b'],
        ['symbol', '/'],
        ['number', '2.50'],
        ['symbol', '-'],
      ],
      ...[
        ['symbol', '<='],
        ['symbol', '>='],
        ['symbol', '<='],
        ['symbol', '>='],
        ['symbol', '<'],
        ['symbol', '>'],
      ],
      ...[
        ['text', 'q " r'],
        ['text', 's"t'],
        ['text', ''],
        ['end', ''],
      ],
    ]);
    expect(tokens('größe_2 Ωmega')).toEqual([
      ['word', 'größe_2'],
      ['word', 'Ωmega'],
      ['end', ''],
    ]);
    expect(tokens(' \n\t')).toEqual([['end', '']]);
  });

  test.each([
    // The place is the offset, and what was seen spans the whole mistake.
    ['1,000', 'not-a-number', 0, '1,000', 'Write 1000'],
    ['max(1,000,000, 2)', 'not-a-number', 4, '1,000,000', 'Write 1000'],
    ['5%', 'not-a-number', 0, '5%', '0.05'],
    ['2.5.1', 'not-a-number', 0, '2.5.1', 'Units do not stand'],
    ['90min', 'not-a-number', 0, '90min', 'Units do not stand'],
    ['1e-5', 'not-a-number', 0, '1e-5', 'Units do not stand'],
    ['9'.repeat(309), 'not-a-number', 0, `${'9'.repeat(59)}…`, 'a larger unit'],
    ['a + "open', 'unfinished-text', 4, '"', 'Close the text'],
    ['“open', 'unfinished-text', 0, '“', 'Close the text'],
    ["a is 'b'", 'unexpected-character', 5, "'", 'double quotes'],
    ['a is ‘b', 'unexpected-character', 5, '‘', 'double quotes'],
    ['= a', 'unexpected-character', 0, '=', 'Write `is`'],
    ['! a', 'unexpected-character', 0, '!', '`is not`'],
    ['a | b', 'unexpected-character', 2, '|', '`or` and `and`'],
    ['a & b', 'unexpected-character', 2, '&', '`or` and `and`'],
    ['.5', 'unexpected-character', 0, '.', '0.5'],
    ['a # 2', 'unexpected-character', 2, '#', 'letters, digits and underscores'],
    ['😀', 'unexpected-character', 0, '😀', 'letters, digits and underscores'],
  ])('%s is told at its very stretch', (text, code, offset, seen, remedy) => {
    const [problem] = tokensOf({ text, at }).problems;
    expect(problem).toMatchObject({ code, seen, place: { column: 9 + offset } });
    expect(problem!.remedy).toContain(remedy);
  });

  test('beside one another are read on after a mistake, and a text that is not closed ends it all', () => {
    expect(tokensOf({ text: "' 1 ! 2 | 3", at }).problems).toHaveLength(3);
    expect(tokensOf({ text: '"a\' ! |', at }).problems).toHaveLength(1);
    expect(tokens('1,000 2,00 3,0000')).toEqual([
      ...[
        ['number', '1000'],
        ['number', '2'],
        ['symbol', ','],
        ['number', '00'],
      ],
      ...[
        ['number', '3'],
        ['symbol', ','],
        ['number', '0000'],
        ['end', ''],
      ],
    ]);
  });
});

describe('what cannot be read', () => {
  const problems = (text: string) => {
    const parsed = parseFormula(text, at);
    return 'problems' in parsed ? parsed.problems : [];
  };

  test.each([
    ['', 'no-formula', 0, 'count(inspections)'],
    [' ', 'no-formula', 0, 'count(inspections)'],
    ['1 +', 'unfinished-formula', 3, 'Finish the formula'],
    ['1 2', 'unexpected-word', 2, 'Put an operator before a number'],
    ['a "b"', 'unexpected-word', 2, 'before a text'],
    ['a b', 'unexpected-word', 2, 'before a name'],
    ['a )', 'unexpected-word', 2, 'before a sign'],
    ['t where a where b', 'unexpected-word', 10, 'joined with `and`'],
    ['f(t where a where b)', 'unexpected-word', 12, 'joined with `and`'],
    ['(a', 'unexpected-word', 2, 'Close the parenthesis'],
    ['(a, b)', 'unexpected-word', 2, 'only after `in`'],
    ['f(a', 'unexpected-word', 3, 'Close the parenthesis'],
    ['f(a b)', 'unexpected-word', 4, 'Close the parenthesis'],
    ['a in b c', 'unexpected-word', 7, 'Put an operator'],
    ['a in 5', 'unexpected-word', 5, 'in ("port", "starboard")'],
    ['a in where', 'unexpected-word', 5, 'in ("port", "starboard")'],
    ['a in (1 2)', 'unexpected-word', 8, 'Close the parenthesis'],
    ['a in (1', 'unexpected-word', 7, 'Close the parenthesis'],
    ['a between 1', 'unexpected-word', 11, 'both ends'],
    ['a between 1 or 2', 'unexpected-word', 12, 'both ends'],
    ['a not 5', 'unexpected-word', 6, '`is not`'],
    ['sum(a of 5)', 'unexpected-word', 9, 'Name the rows'],
    ['sum(a of of)', 'unexpected-word', 9, 'Name the rows'],
    ['sum(1 where a)', 'unexpected-word', 6, 'then `of`'],
    ['sum(1 here)', 'unexpected-word', 6, 'then `of`'],
    ['f with 5 as 2', 'unexpected-word', 7, 'with this_season as 2024'],
    ['f with a 2', 'unexpected-word', 9, 'with this_season as 2024'],
    ['f with of as 2', 'unexpected-word', 7, 'with this_season as 2024'],
    ['a of s for (1', 'unexpected-word', 13, 'Close the parenthesis'],
    ['a + of', 'unexpected-word', 4, 'A value must stand before a name'],
    ['a * )', 'unexpected-word', 4, 'A value must stand before a sign'],
    ['--5', 'unexpected-word', 1, 'A value must stand before a sign'],
  ])('%s is told once, at its place, with a way out', (text, code, offset, remedy) => {
    const [problem, ...more] = problems(text);
    expect(more).toEqual([]);
    expect(problem).toMatchObject({ code, place: { column: 9 + offset } });
    expect(problem!.remedy).toContain(remedy);
  });

  test('is passed over to the next comma or closing parenthesis, whatever is nested in it', () => {
    expect(problems('max(a b (c, d), 1 2, (3 4), e)').map(({ place }) => place.column! - 9)).toEqual([6, 18, 24]);
    expect(problems('max((a, b), 2)').map(({ place }) => place.column! - 9)).toEqual([6]);
    expect(problems('f((a, (b, c) d), 2 3)').map(({ place }) => place.column! - 9)).toEqual([4, 19]);
    expect(problems('(1 2) 3').map(({ place }) => place.column! - 9)).toEqual([3, 6]);
    expect(problems('f(1 2) + g(3 4)').map(({ place }) => place.column! - 9)).toEqual([4, 13]);
  });

  test('is too long or too deep only beyond what is allowed', () => {
    const { characters, depth } = formulaBounds;
    const code = (text: string) => problems(text).map((problem) => problem.code);
    expect(code('1'.padEnd(characters, ' '))).toEqual([]);
    expect(code('1'.padEnd(characters + 1, ' '))).toEqual(['too-long']);
    const nested = (levels: number) => `${'('.repeat(levels)}1${')'.repeat(levels)}`;
    expect(code(nested(depth - 1))).toEqual([]);
    expect(code(nested(depth))).toEqual(['too-deep']);
    // Depth is left again where nesting ends.
    expect(code(Array.from({ length: 30 }, () => nested(depth - 1 > 20 ? 20 : 1)).join(' + '))).toEqual([]);
  });

  test('words of the language name nothing', () => {
    const words = ['or', 'and', 'not', 'is', 'in', 'between', 'of', 'where', 'here', 'missing', 'for', 'with', 'as'];
    expect(words.filter(isLanguageWord)).toEqual(words);
    expect(['count', 'Or', 'ofs', ''].filter(isLanguageWord)).toEqual([]);
  });
});

describe('an input', () => {
  const places = { value: at, unit: { ...at, column: 40 } };
  const of = (value: number | string, unit = '', counted: readonly string[] = []) =>
    inputValue(value, unit, places, counted);

  test.each([
    ['23.40', 23.4],
    ['48,000', 48_000],
    ['1,234,567.5', 1_234_567.5],
    ['-5', -5],
    ['−5', -5],
    [' 7 ', 7],
    [7.25, 7.25],
  ])('%s is the number %d', (text, value) => {
    expect(of(text)).toMatchObject({ kind: 'number', value, unit: [] });
  });

  test.each(['1e5', '5.', '.5', '4,80', '1,0000', '+5', '5 000', 'NaN', 'Infinity', '9'.repeat(310)])(
    '%s is a text, and no number of a unit',
    (text) => {
      expect(of(text)).toMatchObject({ kind: 'text', text });
      const wrong = of(text, 'minutes');
      expect('problems' in wrong && wrong.problems).toMatchObject([
        { code: 'not-a-number', wanted: 'a number, in minutes', place: { column: 9 } },
      ]);
    },
  );

  test('is told all that is wrong with it, each at its own cell', () => {
    const told = (value: string, unit: string) => {
      const found = of(value, unit);
      return 'problems' in found ? found.problems.map(({ code, place }) => [code, place.column]) : [];
    };
    expect(told('', '')).toEqual([['no-value', 9]]);
    expect(told('  ', 'minutes')).toEqual([['no-value', 9]]);
    expect(told('', 'parsecs')).toEqual([
      ['no-value', 9],
      ['not-a-unit', 40],
    ]);
    expect(told('', 'list')).toEqual([['no-value', 9]]);
    expect(told('5', 'list of parsecs')).toEqual([['not-a-unit', 40]]);
    expect(told('5, , 6', 'list')).toEqual([['no-value', 12]]);
    expect(told('5, x, 6', 'list of minutes')).toEqual([['not-a-number', 12]]);
    expect(told('2025-05-01, 5', 'list')).toEqual([['wrong-kind', 21]]);
    expect(told('5', 'list of list')).toEqual([['not-a-unit', 40]]);
    expect(told('5', 'list of list of minutes')).toEqual([['not-a-unit', 40]]);
  });

  test('is taken in its unit, which may be a thing that the book counts', () => {
    expect(of('57', 'percent')).toMatchObject({ value: 0.57, unit: [] });
    expect(of('3', 'traps', ['traps'])).toMatchObject({ value: 3 });
    expect(of('3', 'list of traps', ['traps'])).toMatchObject({ kind: 'list', items: [{ value: 3 }] });
    expect('problems' in of('3', 'traps')).toBe(true);
    const near = of('3', 'minuts');
    expect('problems' in near && near.problems[0]!.remedy).toMatch(/Did you mean `minutes`\?/);
    const far = of('3', 'qqqqqqqqqqqq');
    expect('problems' in far && far.problems[0]!.remedy).toMatch(/^Units are words/);
  });
});

test('a date is a day of the calendar, written in full', () => {
  // `date -u -d`, GNU coreutils; 1900 was no leap year, 2000 was.
  expect(['1970-01-01', '2000-02-29', '0099-12-31', '9999-12-31'].map(dayOf)).toEqual([0, 11_016, -683_004, 2_932_896]);
  const none = ['1900-02-29', '2025-02-30', '2025-13-01', '2025-00-10', '2025-01-00', '2025-1-1', '25-01-01'];
  expect([...none, ' 2025-01-01', '2025-01-01 ', '2025-01-01T00:00', ''].map(dayOf)).toEqual(Array(11).fill(null));
});
