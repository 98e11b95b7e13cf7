import fc from 'fast-check';
import { expect, test } from 'vitest';
import { computeNotebook } from '../../src/notebook/compute-notebook.js';
import { readDocument } from '../../src/notebook/read-document.js';
import { smallBook } from '../formula/small-book.js';

/** Pieces of formulas, so that names of figures, columns, sheets and inputs meet in every way, sound and unsound. */
const pieces = [
  ...['count()', 'count(inspections)', 'a', 'b', 'c', 'looked', 'part', 'length_ft', 'level', 'many', '2', '"North"'],
  ...[
    'looked of s for station',
    'part of s for "North"',
    'sum(looked of s)',
    'mean(part of t here)',
    'looked of t for c',
  ],
  ...['rank_from_highest(looked of s)', 'running_sum(part of s)', 'count(s where looked > 1)', 'share(looked, a)'],
  ...['a with level as 3', 'c with level as (b)', 'looked with level as 1', 'first_known(a, b)', 'if(a > 1, b, "x")'],
  ...[
    'median(length_ft)',
    'listed(station)',
    'earliest(day)',
    'month_of(earliest(day of inspections))',
    'station in many',
  ],
];
const formula = fc
  .array(fc.tuple(fc.constantFrom(...pieces), fc.constantFrom(' + ', ' / ', ' - ', ' is ', ' and ', ' of ')), {
    minLength: 1,
    maxLength: 2,
  })
  .map((parts) => parts.map(([piece, joint], at) => (at === 0 ? piece : joint + piece)).join(''));

test('any formulas in figures and sheets give values or problems with places, and never an error', () => {
  let figures = 0;
  let cells = 0;
  fc.assert(
    fc.property(fc.array(formula, { minLength: 7, maxLength: 7 }), ([a, b, c, looked, part, again, other]) => {
      const lines = [
        ...['| input | value | unit |', '|---|---|---|', '| level | 2 | |', '| many | North, East | list |', ''],
        ...['| figure | formula |', '|---|---|', `| a | ${a} |`, `| b | ${b} |`, `| c | ${c} |`, ''],
        ...['Sheet s: each station of inspections, highest looked first.', ''],
        ...['| column | formula |', '|---|---|', `| looked | ${looked} |`, `| part | ${part} |`, ''],
        ...['Sheet t: each station and season of inspections.', ''],
        ...['| column | formula |', '|---|---|', `| looked | ${again} |`, `| part | ${other} |`, ''],
      ];
      const { notebook } = computeNotebook(readDocument('any.md', lines.join('\n')), smallBook, '');
      for (const { place } of notebook.problems) {
        expect(place.line).toBeGreaterThan(0);
        expect(place.line).toBeLessThanOrEqual(lines.length);
      }
      for (const { result } of notebook.figures.values()) {
        if (result.kind !== 'number' || result.value === null) continue;
        expect(Number.isFinite(result.value)).toBe(true);
        figures += 1;
      }
      for (const { columns, rows } of notebook.sheets.values()) {
        cells += rows.length * columns.filter(({ role }) => role === 'value').length;
      }
    }),
    { numRuns: 400, seed: 17 },
  );
  expect(figures).toBeGreaterThan(40);
  expect(cells).toBeGreaterThan(400);
});
