import { describe, expect, test } from 'vitest';
import type { Environment } from '../../src/formula/environment.js';
import type { Evaluated, NumberValue } from '../../src/formula/value/evaluated.js';
import { sharedWeights } from '../../src/formula/value/resamples.js';
import { computeNotebook } from '../../src/notebook/compute-notebook.js';
import { readDocument } from '../../src/notebook/read-document.js';
import { randomFrom } from '../../src/statistic/random.js';
import { askNumber, environmentOf, valueOfFormula } from './ask.js';
import { book, numbers, table, texts } from './small-book.js';

const random = randomFrom(7);
const normal = (): number => Math.sqrt(-2 * Math.log(1 - random.uniform())) * Math.cos(2 * Math.PI * random.uniform());

/** Looks at so many depths, a station-day each unless they share some. */
function looked(depths: readonly (number | null)[], days: number = depths.length) {
  const kinds = depths.map((_, row) => ['hull', 'hold', 'rail'][row % 3]!);
  const hours = depths.map((_, row) => (row % 7) / 100);
  return book(
    [
      table(
        'looked',
        'looks',
        [numbers('depth', 'feet', depths), texts('kind', kinds), numbers('spent', 'hours', hours)],
        depths.map((_, row) => row % days),
      ),
    ],
    Array.from({ length: days }, () => 0),
  );
}

test('the share above a mean of the same rows varies as far as theory says, and less than above a fixed limit', () => {
  // Gastwirth 1971, JASA 66:821-823 (the sign test about an estimated mean), from memory; by the delta method the variance of
  // the share of normal values above their own mean is (1/4 − 1/(2π)) ÷ n, where that above a fixed mean is 1/4 ÷ n.
  const count = 900;
  const environment = environmentOf(looked(Array.from({ length: count }, normal)));
  const half = (text: string): number => {
    const { interval } = askNumber(text, environment);
    return (interval!.high! - interval!.low!) / 2;
  };
  const above = (limit: string) => `rate(count(looked where depth > ${limit}), count(looked))`;
  const wanted = 1.96 * Math.sqrt((1 / 4 - 1 / (2 * Math.PI)) / count);
  expect(half(above('mean(depth of looked)')) / wanted).toBeGreaterThan(0.9);
  expect(half(above('mean(depth of looked)')) / wanted).toBeLessThan(1.1);
  expect(half(above('0')) / (1.96 * Math.sqrt(1 / 4 / count))).toBeCloseTo(1, 1);
});

const depths = Array.from({ length: 60 }, (_, row) => (row % 11 === 0 ? null : Math.round(6 + 4 * normal())));
const environment = environmentOf(looked(depths, 20));
const usual = valueOfFormula('mean(depth of looked)', environment) as NumberValue;
const withUsual: Environment = { ...environment, known: new Map<string, Evaluated>([['usual', usual]]) };

/** The same by brute force: in every resample each row with its day's weight, where it holds against that resample's limit. */
function bySums(holds: (row: number, limit: number) => boolean, amount: (row: number) => number = () => 1): number[] {
  const weights = sharedWeights(environment);
  const { count } = environment.book.clusters;
  return Array.from(usual.draws!(), (limit, draw) =>
    depths.reduce<number>((sum, depth, row) => {
      if (depth === null || !holds(row, limit)) return sum;
      return sum + weights[draw * count + (row % 20)]! * amount(row);
    }, 0),
  );
}

function drawsOf(text: string, known = withUsual): number[] {
  return Array.from((valueOfFormula(text, known) as NumberValue).draws!());
}

describe('rows that a figure decides are those that it decides in each resample', () => {
  const depth = (row: number): number => depths[row]!;
  test.each<[string, (row: number, limit: number) => boolean]>([
    ['depth > usual', (row, limit) => depth(row) > limit],
    ['depth >= usual', (row, limit) => depth(row) >= limit],
    ['depth < usual', (row, limit) => depth(row) < limit],
    ['depth <= usual', (row, limit) => depth(row) <= limit],
    ['usual < depth', (row, limit) => depth(row) > limit],
    ['usual * 12 >= depth * 12 and kind is "hull"', (row, limit) => depth(row) * 12 <= limit * 12 && row % 3 === 0],
    [
      'kind is not "hold" and depth > usual and spent > 0',
      (row, limit) => depth(row) > limit && row % 3 !== 1 && row % 7 > 0,
    ],
  ])('where %s', (where, holds) => {
    expect(drawsOf(`count(looked where ${where})`)).toEqual(bySums(holds));
  });

  test('added up, averaged, and of a selection that is narrowed further', () => {
    const isDeep = (row: number, limit: number): boolean => depth(row) > limit;
    const spent = bySums(isDeep, (row) => (row % 7) / 100);
    const close = (text: string, wanted: readonly number[], known = withUsual): void => {
      const furthest = drawsOf(text, known).map((draw, at) => Math.abs(draw - wanted[at]!));
      expect(Math.max(...furthest)).toBeLessThan(1e-9);
    };
    const many = bySums(isDeep);
    close('sum(spent of looked where depth > usual)', spent);
    close(
      'mean(spent of looked where depth > usual)',
      spent.map((sum, at) => sum / many[at]!),
    );
    const deep = valueOfFormula('looked where depth > usual', withUsual);
    const known = { ...withUsual, known: new Map([...withUsual.known, ['deep', deep]]) };
    const isHull = (row: number, limit: number): boolean => isDeep(row, limit) && row % 3 === 0;
    close('count(deep where kind is "hull")', bySums(isHull), known);
    close('sum(depth of deep where kind is "hull")', bySums(isHull, depth), known);
  });
});

test.each([
  ['two limits', 'count(looked where depth > usual and depth < usual * 2)'],
  ['a limit and its equal', 'count(looked where depth is usual)'],
  ['one of several ways to belong', 'count(looked where depth > usual or kind is "hull")'],
  ['a limit that moves with the row', 'count(looked where depth > usual + depth / 2)'],
  ['rows that are not added up', 'median(spent of looked where depth > usual)'],
])('there is no interval, and the reason why, where %s', (_, text) => {
  const { interval, why, cautions } = askNumber(`${text} / sum(spent of looked)`, withUsual);
  expect(interval).toBeNull();
  expect(why).toBe('usual decides which rows are counted, and they cannot be drawn again with it here');
  expect(cautions).toContain('usual decides which rows are counted, and is taken as known');
});

test('a limit that rests on few records gives what it decides no interval either', () => {
  const few = valueOfFormula('mean(depth of looked where depth > 12)', environment) as NumberValue;
  expect(few.fewest).toBeLessThan(5);
  const known = { ...environment, known: new Map<string, Evaluated>([['few', few]]) };
  const { interval, why } = askNumber('rate(count(looked where depth < few), count(looked))', known);
  expect([interval, why]).toEqual([null, expect.stringContaining('fewer than five cannot be resampled')]);
});

test('the groups of a sheet share the rows of a resample out among them', () => {
  const text = [
    '# N',
    '',
    '| selection | rows |',
    '|---|---|',
    '| deep | looked where depth > mean(depth of looked) |',
    '',
    '| figure | formula |',
    '|---|---|',
    '| all | count(deep) |',
    '| days | count(looked) |',
    '',
    'Sheet by_kind: each kind of deep.',
    '',
    '| column | formula |',
    '|---|---|',
    '| n | count() |',
    '| few | count(where spent > 0.02) |',
    '| again | count(deep here) |',
    '',
  ].join('\n');
  const workings = computeNotebook(readDocument('n.md', text), environment.book, '');
  expect(workings.notebook.problems).toEqual([]);
  const { cells } = workings.sheets.get('by_kind')!;
  const draws = (column: string) => cells.map((row) => (row.get(column) as NumberValue).draws!());
  const all = (workings.names.get('all')!.value as NumberValue).draws!();
  const summed = Array.from(all, (_, draw) => draws('n').reduce((sum, own) => sum + own[draw]!, 0));
  expect(summed).toEqual([...all]);
  expect(draws('again')).toEqual(draws('n'));
  const fewer = draws('few').map((own, at) => own.every((draw, place) => draw <= draws('n')[at]![place]!));
  expect(fewer).toEqual([true, true, true]);
});
