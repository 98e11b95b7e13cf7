import type { BookTable } from '../record/book.js';
import { once } from './book/once.js';
import type { RowRule } from './counted-rows.js';
import type { CraftParts } from './craft-parts.js';
import { groupRows } from './group-rows.js';
import { bookText, isValue } from './row-tests.js';

/** What is asked of single looks when the rows behind the numbers of parts and craft are told. */
export interface LookTests {
  /** A number that looks at the same craft share, and no others. */
  readonly craftOf: (row: number) => number;
  /** The craft of a look, as `CraftParts` numbers them. */
  readonly craftAt: (row: number) => number;
  /** Whether the form does not call the part absent; whether it was looked at; whether mussels were found on it. */
  readonly isCarried: (row: number) => boolean;
  readonly isLooked: (row: number) => boolean;
  readonly isFound: (row: number) => boolean;
  /** Looks at the part at that place of the catalogue. */
  readonly looksAt: (place: number) => Uint32Array;
  /** Looks that found mussels on a part at one of those places. */
  readonly findsOn: (places: ReadonlySet<number>) => Uint32Array;
  /** Looks that found mussels, on whatever part: of the craft that are fouled. */
  readonly anywhere: RowRule;
}

/** The tests for some looks, gathered by craft and part. */
export function lookTests(table: BookTable, rows: Uint32Array, { components, firstRows }: CraftParts): LookTests {
  const inspection = bookText(table, 'inspection');
  const craftOf = once(() => {
    const numbers = new Uint32Array(inspection.dictionary.length);
    firstRows.forEach((row, craft) => {
      numbers[inspection.codes[row]!] = craft;
    });
    return numbers;
  });
  const state = bookText(table, 'state').codes;
  const [absent, skipped] = [isValue(table, 'state', 'absent'), isValue(table, 'state', 'not checked')];
  const [fouled, mussels] = [isValue(table, 'state', 'fouled'), isValue(table, 'finding', 'mussels')];
  const isCarried = (row: number): boolean => state[row] !== 0 && !absent(row);
  const isFound = (row: number): boolean => fouled(row) && mussels(row);
  const rowsOf = once(() => new Map(groupRows(table, rows, ['component']).map(({ key, rows: own }) => [key[0], own])));
  const finds = once(() => rows.filter(isFound));
  const component = bookText(table, 'component');
  const placeOf = component.dictionary.map((name) => components.indexOf(name));
  return {
    craftOf: (row) => inspection.codes[row]!,
    craftAt: (row) => craftOf()[inspection.codes[row]!]!,
    isCarried,
    isLooked: (row) => isCarried(row) && !skipped(row),
    isFound,
    looksAt: (place) => rowsOf().get(components[place]!) ?? new Uint32Array(),
    findsOn: (places) => finds().filter((row) => places.has(placeOf[component.codes[row]!]!)),
    anywhere: { words: 'looks that found mussels on any part', within: finds },
  };
}
