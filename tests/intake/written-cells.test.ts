import { describe, expect, test } from 'vitest';
import { plainDigits } from '../../src/intake/number-marks.js';
import { readWithin, takenFrom } from '../../src/intake/within.js';
import { readWrittenNumber } from '../../src/intake/written-number.js';
import { fieldOf, type NumberField } from '../../src/record/field.js';
import { tableOf } from '../../src/record/tables.js';
import { cellsOf } from './one-column.js';

const field = (table: 'inspections' | 'decontaminations' | 'spending', name: string) =>
  fieldOf(tableOf(table), name) as NumberField;
const length = field('inspections', 'length_ft');
const temperature = field('decontaminations', 'contact_temp_f');
const point = { decimal: '.', thousands: null } as const;

describe('a unit written in the cell', () => {
  // NIST SP 811, appendix B: 1 ft = 12 in = 0.3048 m; t(°F) = 1.8 t(°C) + 32.
  test('is read in its usual spellings, and turned into the unit of the field', () => {
    const feet = (text: string) => readWrittenNumber(text, length, null, point);
    for (const text of [
      '22 ft',
      '22ft.',
      '22 FEET',
      "22'",
      '22′',
      '264 in',
      '22 ft 0 in',
      '22\' 0"',
      '6.7056 m',
      '670.56 cm',
    ]) {
      const read = feet(text);
      expect('value' in read ? read.value : text, text).toBe(22);
    }
    expect(feet('22\'6"')).toEqual({ value: 22.5 });
    expect(feet('22 ft 6 in')).toEqual({ value: 22.5 });
    const warm = (text: string) => readWrittenNumber(text, temperature, null, point);
    expect([warm('140 °F'), warm('140F'), warm('60 °C'), warm('60 deg C')]).toEqual(Array(4).fill({ value: 140 }));
  });

  test('that the field cannot be in, that is missing, or that stands in the wrong order sets the row aside', async () => {
    const cells = ['5 years', '18 months', '5 yr 6 mo', '5 ft', '5', '6 mo 5 yr', '5 yr 6 yr', 'old', '5 yr 6', 'NA'];
    expect(await cellsOf('{ field: expected_life, unit: written }', cells)).toEqual([
      5,
      1.5,
      5.5,
      ...Array(4).fill('unknown-unit'),
      'not-a-number',
      'unknown-unit',
      null,
    ]);
  });

  test('may be left out where a unit is declared for that', async () => {
    expect(await cellsOf('{ field: expected_life, unit: written or months }', ['6', '6 years'])).toEqual([0.5, 6]);
  });

  test('money may carry its sign, and thousands their marks', async () => {
    const cells = ['$41,500', '41,500.50', '$1,2', '1,234,567', '1234567.5', '41,50'];
    const declared = '    thousands: comma';
    expect(await cellsOf('{ field: capital_cost, unit: written or dollars }', cells, declared)).toEqual([
      41_500,
      41_500.5,
      'not-a-number',
      1_234_567,
      1_234_567.5,
      'not-a-number',
    ]);
  });
});

describe('thousands marks', () => {
  test('stand between groups of three digits, and only where they are declared', async () => {
    const cells = ['1 234,5', '1\u00a0234', '12 34', '1.234', '1234'];
    const declared = '    decimal: comma\n    thousands: space';
    expect(await cellsOf('{ field: capital_cost }', cells, declared)).toEqual([
      1234.5,
      1234,
      'not-a-number',
      'not-a-number',
      1234,
    ]);
    expect(plainDigits("1'234.5", { decimal: '.', thousands: 'apostrophe' })).toBe('1234.5');
    expect(plainDigits('-1.234,5', { decimal: ',', thousands: 'point' })).toBe('-1234.5');
  });

  test('cannot be the decimal mark', async () => {
    const declared = '    decimal: comma\n    thousands: comma';
    expect(await cellsOf('{ field: capital_cost }', ['1'], declared)).toEqual(['crosswalk-wrong-value']);
  });
});

describe('a value within a text', () => {
  const taken = (pattern: string, text: string) => {
    const read = readWithin(pattern);
    if (typeof read === 'string') throw new Error(read);
    return takenFrom(read, text);
  };

  test('is taken out where the pattern finds it, in capitals or not', () => {
    expect(taken('*temp {number} F*', 'pump 3, Temp  140 f at nozzle')).toBe('140');
    expect(taken('*temp {number}F*', 'temp 3, temp 141.5F')).toBe('141.5');
    expect(taken('len={number}*', 'len=22ft; red')).toBe('22');
    expect(taken('*owner: {text};*', 'boat; owner: A B ; red')).toBe('A B');
    expect(taken('{word} *', 'AB12 red')).toBe('AB12');
    expect(taken('*#{word}', 'x #1 #22')).toBe('22');
    expect(taken('temp {number}', 'temp 140 F')).toBeNull();
  });

  test('takes time in proportion to the text, whatever it holds', () => {
    // Tried in every way, this would outlast any patience, and the test's.
    expect(taken('*a*a*a*a*a*a*a*a{number}b', 'a'.repeat(4000))).toBeNull();
  });

  test('is a problem where it is not found, unless it may be missing', async () => {
    const cells = ['cost $ 41500 new', 'none', ''];
    const within = '"*$ {number}*"';
    expect(await cellsOf(`{ field: capital_cost, within: ${within} }`, cells)).toEqual([
      41_500,
      'not-as-declared',
      null,
    ]);
    const orMissing = `{ field: capital_cost, within: { text: ${within}, otherwise: missing } }`;
    expect(await cellsOf(orMissing, cells)).toEqual([41_500, null, null]);
  });

  test('cannot be asked for by a pattern that could match in many ways', () => {
    expect(readWithin('**{number}')).toContain('nothing stands between');
    expect(readWithin('*{text}')).toContain('nothing stands between');
    expect(readWithin('{number} {word}')).toContain('more than one');
    expect(readWithin('{digits}')).toContain('none of');
    expect(readWithin('plain')).toContain('nothing');
  });

  test('may be a date with its season', async () => {
    const column = '{ field: in_service_on, within: "*since {word}*", pattern: MM/dd/yyyy }';
    expect(await cellsOf(column, ['new, since 01/02/1970'])).toEqual([1]);
  });
});

test('of several values in one cell the declared one is taken', async () => {
  const cells = ['5; 7', '5;5', ' ;7', '7'];
  const column = (take: string) => `{ field: expected_life, several: { between: ";", take: ${take} } }`;
  expect(await cellsOf(column('first'), cells)).toEqual([5, 5, 7, 7]);
  expect(await cellsOf(column('last'), cells)).toEqual([7, 5, 7, 7]);
  expect(await cellsOf(column('only'), cells)).toEqual(['not-as-declared', 5, 7, 7]);
});

describe('a code in many spellings', () => {
  test('is known by each that is declared', async () => {
    const column = '{ field: kind, spelt: { portable: [P, port, "1"], fixed: [F] } }';
    expect(await cellsOf(column, ['P', 'port', '1', 'F', 'p'])).toEqual([
      'portable',
      'portable',
      'portable',
      'fixed',
      'unknown-code',
    ]);
    expect(
      await cellsOf(column.replace(' }', ', case: any }').replace('[F], case: any }', '[F] }, case: any'), [
        'p',
        'PORT',
      ]),
    ).toEqual(['portable', 'portable']);
  });

  test('is declared once', async () => {
    expect(await cellsOf('{ field: kind, spelt: { portable: [P], fixed: [P] } }', ['P'])).toEqual(['crosswalk-twice']);
    expect(await cellsOf('{ field: kind, spelt: plainly }', ['P'])).toEqual(['crosswalk-wrong-value']);
  });
});

test('blank, NA, 0, None and unknown stay different things', async () => {
  const column =
    '{ field: kind, missing: { "": blank }, codes: { "0": portable, None: fixed, unknown: , NA: portable } }';
  // The field must have a value: a blank sets its row aside, as does a text declared to mean nothing.
  expect(await cellsOf(column, ['', 'NA', '0', 'None', 'unknown', 'none'])).toEqual([
    'missing-value',
    'portable',
    'portable',
    'fixed',
    'missing-value',
    'unknown-code',
  ]);
  expect(await cellsOf('{ field: capital_cost, missing: [n/a] }', ['n/a', '0', ''])).toEqual([null, 0, 'not-a-number']);
});
