import { expect, test } from 'vitest';
import { openBook } from '../../src/finding/book.js';
import { formulaFunctions } from '../../src/formula/functions/functions.js';
import { isLanguageWord } from '../../src/formula/reader.js';
import { sheetValue } from '../../src/formula/sheet/sheet-value.js';
import { readUnit } from '../../src/formula/unit/read-unit.js';
import { unitOf } from '../../src/formula/unit/unit.js';
import { unitWord } from '../../src/formula/unit/word.js';
import type { Evaluated } from '../../src/formula/value/evaluated.js';
import { kindOfValue } from '../../src/formula/value/kind-of-value.js';
import { givenNumber } from '../../src/formula/value/number.js';
import { smallRecords, smallSum } from '../finding/small-records.js';
import { ask, environmentOf, problemsOf } from './ask.js';

const book = openBook(smallRecords({}), smallSum('2025-11-01T00:00Z'));

function given(word: string): Evaluated {
  return givenNumber(1, unitOf(unitWord(word)!));
}

const known = new Map<string, Evaluated>([
  ['intercepted', given('inspections')],
  ['inspected', given('inspections')],
  ['spent', given('dollars')],
  ['planned', given('dollars')],
  ['target', given('minutes')],
  ['staff_cost', given('dollars')],
]);

const byStation = sheetValue(
  'by_station',
  { fields: [book.tables.get('inspections')!.fields.get('station')!], rows: [['a'], ['b']] },
  new Map([
    ['inspected', { kind: kindOfValue(given('inspections')), cells: [given('inspections'), given('inspections')] }],
  ]),
);

/** The second row of a sheet, in which the examples of places among rows can stand. */
const inSheet = environmentOf(book, new Map([...known, ['by_station', byStation]]), {
  sheet: 'by_station',
  table: 'inspections',
  rows: new Uint32Array(0),
  keys: new Map([['station', 'b']]),
});

test.each(formulaFunctions.map(({ name, example }) => [name, example]))(
  'the example of %s can be computed from records, even from none',
  (_, example) => {
    expect(problemsOf(example, inSheet)).toEqual([]);
    expect(ask(example, inSheet).kind).toMatch(/^(?:number|text|date|missing)$/);
  },
);

test('every unit that a table or field of the book has is a known one', () => {
  const words = [...book.tables.values()].flatMap(({ counted, fields }) => [
    counted,
    ...[...fields.values()].map(({ unit }) => unit).filter((unit) => unit !== null),
  ]);
  expect([...new Set(words)].filter((word) => 'unknown' in readUnit(word))).toEqual([]);
});

test('no table or field is called by a word of the language, and no table as a function', () => {
  const names = [...book.tables.values()].flatMap(({ name, fields }) => [name, ...fields.keys()]);
  expect(names.filter(isLanguageWord)).toEqual([]);
  const functions = new Set(formulaFunctions.map(({ name }) => name));
  expect([...book.tables.keys()].filter((name) => functions.has(name))).toEqual([]);
});
