import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { restrictedBook } from '../../src/finding/book/restricted-book.js';
import { clusterColumn, watchedBook } from '../../src/finding/book/watched-book.js';
import { accountOf } from '../../src/formula/value/evaluated.js';
import type { Book, BookTable } from '../../src/record/book.js';
import { environmentOf, valueOfFormula } from './ask.js';
import { book, type FilledField, numbers, table, texts } from './small-book.js';

interface Craft {
  readonly season: number | null;
  readonly extent: string | null;
}

const parts = ['hull', 'anchor', 'trailer'];

/** Inspections, and looks of the inspections whose places `looks` names in turn; each look has what its inspection has. */
function bookOf(craft: readonly Craft[], looks: readonly number[], withParent: boolean): Book {
  const fields = (own: readonly Craft[]): FilledField[] => [
    numbers(
      'season',
      null,
      own.map(({ season }) => season),
    ),
    texts(
      'extent',
      own.map(({ extent }) => extent),
    ),
  ];
  const inspections = table('inspections', 'inspections', fields(craft), null);
  const part = texts(
    'component',
    looks.map((_, at) => parts[at % parts.length]!),
  );
  const plain = table('checks', 'looks', [part, ...fields(looks.map((place) => craft[place]!))], null);
  const parent = {
    table: inspections,
    gives: (field: string) => field !== 'component' && inspections.fields.has(field),
    rowOf: () => rows,
  };
  const rows = Int32Array.from(looks);
  const checks: BookTable = withParent ? { ...plain, parent } : plain;
  return book([inspections, checks], []);
}

const told = (formula: string, of: Book) =>
  accountOf(valueOfFormula(formula, environmentOf(of))).map(({ rows, unknown, noneKnown }) => ({
    rows: [...rows],
    unknown,
    noneKnown,
  }));

const three: readonly Craft[] = [
  { season: 2024, extent: 'full' },
  { season: 2025, extent: 'full' },
  { season: 2025, extent: null },
];

const conditions = [
  'season is 2025',
  'season is 2025 and extent is "full"',
  'season between 2024 and 2025 or extent is missing',
  'not (extent is "full")',
  'extent in ("full", "none")',
  'season is 2025 and component is "hull"',
  'season >= highest(season of inspections)',
];

describe('a condition on what rows have from their parents', () => {
  test('is true of all rows of the parents it is true of', () => {
    // Looks 0 and 1 are of the first inspection, 2 to 4 of the second, 5 to 7 of the third, whose extent is not known.
    const of = bookOf(three, [0, 0, 1, 1, 1, 2, 2, 2], true);
    expect(told('count(checks where season is 2025)', of)).toEqual([{ rows: [2, 3, 4, 5, 6, 7], unknown: 0 }]);
    expect(told('count(checks where season is 2025 and extent is "full")', of)).toEqual([
      { rows: [2, 3, 4], unknown: 3 },
    ]);
  });

  test('passes over parents without rows, and takes rows in whatever order they stand', () => {
    expect(told('count(checks where season is 2025)', bookOf(three, [0, 0, 2, 2], true))).toEqual([
      { rows: [2, 3], unknown: 0 },
    ]);
    expect(told('count(checks where season is 2025)', bookOf(three, [2, 0, 1, 0, 2], true))).toEqual([
      { rows: [0, 2, 4], unknown: 0 },
    ]);
  });

  test('is asked of the parents in the name of their rows', () => {
    const watched = watchedBook(bookOf(three, [0, 0, 1, 1, 2, 2], true), () => 'figure');
    told('count(checks where season is 2025)', watched.book);
    expect([...watched.asked].map(([name, columns]) => [name, [...columns.keys()]])).toEqual([
      ['checks', ['season', clusterColumn]],
    ]);
  });

  const someCraft = fc.array(
    fc.record({ season: fc.constantFrom(2023, 2024, 2025, null), extent: fc.constantFrom('full', 'brief', null) }),
    { minLength: 1, maxLength: 6 },
  );
  const someBook = fc.tuple(someCraft, fc.boolean()).chain(([craft, inOrder]) => {
    const places = fc.array(fc.nat(craft.length - 1), { minLength: craft.length + 1, maxLength: 30 });
    return places.map((looks) => ({ craft, looks: inOrder ? looks.toSorted((one, other) => one - other) : looks }));
  });

  test.each(conditions)('counts the same rows as when each is asked: %s', (condition) => {
    fc.assert(
      fc.property(someBook, fc.boolean(), ({ craft, looks }, isChosen) => {
        const of = (withParent: boolean): Book => {
          const whole = bookOf(craft, looks, withParent);
          return isChosen ? restrictedBook(whole, new Map([['component', 'hull']])) : whole;
        };
        const formula = `count(checks where ${condition})`;
        expect(told(formula, of(true))).toEqual(told(formula, of(false)));
      }),
      { seed: 1, numRuns: 100 },
    );
  });
});
