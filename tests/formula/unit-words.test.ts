import { describe, expect, test } from 'vitest';
import { conversion, convert } from '../../src/formula/unit/convert.js';
import { divideUnits, multiplyUnits } from '../../src/formula/unit/product.js';
import { readUnit } from '../../src/formula/unit/read-unit.js';
import { sumUnits } from '../../src/formula/unit/sum.js';
import { describeUnit, nameUnit, type Unit, unitOf } from '../../src/formula/unit/unit.js';
import { countedWord, oneOf } from '../../src/formula/unit/word.js';

function unit(words: string, counted: readonly string[] = []): Unit {
  const read = readUnit(words, counted);
  if ('unknown' in read) throw new Error(read.unknown);
  return read.unit;
}
const said = (words: string, counted: readonly string[] = []) => describeUnit(unit(words, counted));

describe('a unit as a person writes it', () => {
  test.each(['', '  ', 'number', 'year'])('"%s" is a plain number', (words) => {
    expect(readUnit(words)).toEqual({ unit: [], factor: 1, divisor: 1 });
  });

  test.each([
    ['per 100', 100],
    ['per 1000', 1000],
    ['per 12,345', 12_345],
    ['per 10,000,000', 10_000_000],
    ['  per   1,000 ', 1000],
  ])('"%s" divides by that number', (words, divisor) => {
    expect(readUnit(words)).toEqual({ unit: [], factor: 1, divisor });
  });

  test.each([
    ['per 0', '0'],
    ['per 1,00', '1,00'],
    ['per 100 boats', '100 boats'],
    ['super 10', 'super 10'],
    ['hopper x', 'hopper x'],
  ])('"%s" is unknown, and told as written', (words, unknown) => {
    const read = readUnit(words);
    expect('unknown' in read ? read.unknown : read).toBe(unknown);
  });

  test('may be divided in words or by a stroke, with blanks or without, and multiplied likewise', () => {
    for (const words of [
      'dollars an hour',
      'dollars per hour',
      'dollars/hour',
      'dollars / hour',
      'dollars/ hour',
      'dollars /hour',
    ]) {
      expect(said(words)).toBe('dollars an hour');
    }
    expect(said(' dollars   an \t hour')).toBe('dollars an hour');
    for (const words of ['dollars × feet', 'dollars×feet', 'dollars ×feet', 'dollars× feet']) {
      expect(said(words)).toBe('dollars × feet');
    }
    expect([said('per inspection'), said('per inspection a day')]).toEqual(['per inspection', 'per inspection a day']);
    expect([said('looks a wash a day'), said('meters'), said('person hours')]).toEqual([
      'looks a wash a day',
      'metres',
      'person-hours',
    ]);
  });

  test('may count what the book counts, in one or several, and is told the nearest of those too', () => {
    expect(said('trailers a day', ['boats', 'trailers'])).toBe('trailers a day');
    expect(said('dollars a trailer', ['boats', 'trailers'])).toBe('dollars a trailer');
    expect(readUnit('trailrs', ['boats', 'trailers'])).toEqual({ unknown: 'trailrs', nearest: 'trailers' });
    expect(readUnit('trailers')).toMatchObject({ unknown: 'trailers' });
  });

  test('whose parts cancel in other words brings what a number is multiplied by', () => {
    // The international foot is 0.3048 m exactly.
    expect(readUnit('feet per metre')).toEqual({ unit: [], factor: 0.3048, divisor: 1 });
    expect(readUnit('hours a minute')).toEqual({ unit: [], factor: 60, divisor: 1 });
  });
});

test('one of several is said as English does', () => {
  const one = [
    'people',
    'entries',
    'washes',
    'inches',
    'boxes',
    'classes',
    'waltzes',
    'looks',
    'craft',
    'boxes of reeds',
  ];
  expect(one.map(oneOf)).toEqual([
    ...['person', 'entry', 'wash', 'inch', 'box', 'class', 'waltz', 'look', 'craft', 'boxes of reed'],
  ]);
  const each = (name: string) => describeUnit(divideUnits(unit('dollars'), unitOf(countedWord(name))).unit);
  expect(['umbrellas', 'uniforms', 'users', 'entries', 'hours', 'hulls', 'oars'].map(each)).toEqual([
    'dollars an umbrella',
    'dollars a uniform',
    'dollars a user',
    'dollars an entry',
    'dollars an hour',
    'dollars a hull',
    'dollars an oar',
  ]);
  expect([nameUnit([]), nameUnit(unit('minutes'))]).toEqual(['a plain number', 'minutes']);
});

describe('temperatures', () => {
  // NIST Special Publication 811 (2008), B.8: t/°C = (t/°F − 32) / 1.8; a difference of 1.8 °F is one of 1 °C.
  const [fahrenheit, celsius] = [unit('degrees F'), unit('degrees C')];
  const sum = (operator: '+' | '-', left: Unit, right: Unit) => {
    const found = sumUnits(operator, left, right);
    return 'code' in found ? `${found.wanted}. ${found.remedy}` : found;
  };

  test('are subtracted, and give a difference in the left one’s degrees', () => {
    const found = sumUnits('-', fahrenheit, celsius);
    if ('code' in found) throw new Error(found.wanted);
    expect([describeUnit(found.unit), convert(60, found.right)]).toEqual(['degrees F of difference', 140]);
    const other = sumUnits('-', celsius, fahrenheit);
    if ('code' in other) throw new Error(other.wanted);
    expect(describeUnit(other.unit)).toBe('degrees C of difference');
    expect(convert(212, other.right)).toBeCloseTo(100, 12);
  });

  test('take a difference, converted without its zero', () => {
    const found = sumUnits('+', celsius, unit('degrees F of difference'));
    if ('code' in found) throw new Error(found.wanted);
    expect(describeUnit(found.unit)).toBe('degrees C');
    expect(convert(18, found.right)).toBeCloseTo(10, 12);
  });

  test('are never added, nor mixed with anything else', () => {
    expect(sum('+', fahrenheit, celsius)).toBe('a temperature difference. Two temperatures can only be subtracted.');
    expect(sum('-', [], fahrenheit)).toContain('the same kind of unit on both sides, not a plain number and degrees F');
    expect(sum('+', fahrenheit, unit('minutes'))).toContain('not degrees F and minutes');
    expect(sum('+', unit('minutes'), [])).toContain('not minutes and a plain number');
    expect([conversion(fahrenheit, unit('minutes')), conversion(unit('minutes'), fahrenheit)]).toEqual([null, null]);
    expect([conversion(unit('kelvins'), fahrenheit)!.shift, conversion(celsius, celsius)]).toEqual([
      expect.closeTo(-459.67, 9),
      { factor: 1, shift: 0 },
    ]);
  });

  test('below a stroke are steps, without a zero', () => {
    const step = conversion(unit('per degree F'), unit('per degree C'))!;
    expect([step.factor, step.shift]).toEqual([expect.closeTo(1.8, 12), 0]);
  });
});

test('hours of work and of the clock cancel, and nothing else that differs does', () => {
  expect(describeUnit(divideUnits(unit('staff hours'), unit('hours')).unit)).toBe('');
  expect(describeUnit(divideUnits(unit('hours'), unit('staff hours')).unit)).toBe('');
  expect(describeUnit(multiplyUnits(unit('hours'), unit('staff hours')).unit)).toBe('hours × staff hours');
  expect(describeUnit(divideUnits(unit('staff hours'), unit('dollars')).unit)).toBe('staff hours a dollar');
  expect(describeUnit(divideUnits(unit('hours'), unit('dollars')).unit)).toBe('hours a dollar');
  expect(describeUnit(divideUnits(unit('dollars'), unit('dollars an hour')).unit)).toBe('hours');
  expect(multiplyUnits(unit('feet'), unit('metres')).factor).toBeCloseTo(1 / 0.3048, 12);
});
