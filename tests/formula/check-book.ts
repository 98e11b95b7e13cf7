import { inputValue } from '../../src/formula/input-value.js';
import { sheetValue } from '../../src/formula/sheet/sheet-value.js';
import type { Evaluated } from '../../src/formula/value/evaluated.js';
import { kindOfValue } from '../../src/formula/value/kind-of-value.js';
import { environmentOf, problemsOf, valueOfFormula } from './ask.js';
import { book, dates, smallBook, table, texts } from './small-book.js';

// What is expected follows from the rules of the language: what each part takes, and that a mistake is told once, at its place.

const at = { file: 'season.md', line: 3, column: 9 };

export function input(value: string, unit = ''): Evaluated {
  const found = inputValue(value, unit, { value: at, unit: { ...at, column: 20 } });
  if ('problems' in found && !('kind' in found)) throw new Error(found.problems[0]!.wanted);
  return found as Evaluated;
}

const moment = (name: string) => ({
  ...dates(name, [0, 1]),
  field: { ...dates(name, []).field, kind: 'instant' as const },
});
export const visits = table(
  'visits',
  'visits',
  [
    moment('began'),
    moment('over'),
    dates('due', [0, 1]),
    texts('shade', ['a', 'b'], [...'abcdefghij']),
    texts('tint', ['a', 'b'], [...'abcdefgh']),
  ],
  null,
);
export const withVisits = book([...smallBook.tables.values(), visits], [0, 0, 1, 1]);

export const field = smallBook.tables.get('inspections')!.fields.get('station')!;
const stations = ['North', 'South'];
const inStation = (station: string, known: ReadonlyMap<string, Evaluated> = new Map()) =>
  environmentOf(withVisits, known, {
    sheet: 'by_station',
    table: 'inspections',
    rows: station === 'North' ? Uint32Array.of(0, 1, 2, 3) : Uint32Array.of(4, 5, 6, 7),
    keys: new Map([['station', station]]),
  });
export const column = (formula: string) => {
  const cells = stations.map((station) => valueOfFormula(formula, inStation(station)));
  return { kind: kindOfValue(cells[0]!), cells };
};
export const byStation = sheetValue(
  'by_station',
  { fields: [field], rows: stations.map((station) => [station]) },
  new Map([
    ['inspected', column('count()')],
    ['typical', column('mean(length_ft)')],
    ['name', column('lower_case(station)')],
    ['first_day', column('earliest(day)')],
  ]),
  Uint32Array.of(0, 1),
);

export const known = new Map<string, Evaluated>([
  ['by_station', byStation],
  ['wage', input('20', 'dollars an hour')],
  ['limit', input('1.5', 'hours')],
  ['opening', input('2025-05-01')],
  ['place', input('Zzzzzz')],
  ['watched', input('North, South', 'list')],
  ['full', valueOfFormula('inspections where extent is "full"')],
]);
known.set('failed', { kind: 'problem', problems: [] });
export const environment = environmentOf(withVisits, known);
export const inSheet = inStation('North', known);

/** Every problem as its code, what was seen, what was wanted and the remedy. */
export const told = (text: string, where = environment) =>
  problemsOf(text, where).map(({ code, seen, wanted, remedy }) => [code, seen, wanted, remedy]);

/** Codes with the place in the formula, which begins at column 5. */
export const placed = (text: string, where = environment) =>
  problemsOf(text, where).map(({ code, place }) => [code, place.column! - 5]);
