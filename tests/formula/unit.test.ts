import fc from 'fast-check';
import { expect, test } from 'vitest';
import { conversion, convert } from '../../src/formula/unit/convert.js';
import { divideUnits, multiplyUnits } from '../../src/formula/unit/product.js';
import { readUnit } from '../../src/formula/unit/read-unit.js';
import { describeUnit, type Unit } from '../../src/formula/unit/unit.js';
import { unitWords } from '../../src/formula/unit/word.js';

function unit(words: string): Unit {
  const read = readUnit(words);
  if ('unknown' in read) throw new Error(read.unknown);
  return read.unit;
}

function converted(value: number, from: string, to: string): number {
  return convert(value, conversion(unit(from), unit(to))!);
}

test('units are converted as NIST Special Publication 811 (2008), appendix B.8, says', () => {
  expect(converted(1, 'feet', 'metres')).toBe(0.3048);
  expect(converted(140, 'degrees F', 'degrees C')).toBeCloseTo(60, 12);
  expect(converted(100, 'degrees C', 'degrees F')).toBeCloseTo(212, 12);
  expect(converted(-40, 'degrees F', 'degrees C')).toBeCloseTo(-40, 12);
  expect(converted(1, 'weeks', 'seconds')).toBe(604_800);
  expect(converted(90, 'minutes', 'hours')).toBe(1.5);
  expect(converted(1, 'hours', 'seconds')).toBe(3600);
  expect(converted(1, 'days', 'seconds')).toBe(86_400);
  expect(converted(1, 'person-hours', 'staff hours')).toBe(1);
  expect(converted(9, 'degrees F of difference', 'degrees C of difference')).toBe(5);
  expect(converted(26, 'feet', 'metres')).toBe(7.9248);
});

test('a unit is said in words', () => {
  expect(describeUnit(divideUnits(unit('dollars'), unit('inspections')).unit)).toBe('dollars an inspection');
  expect(describeUnit(divideUnits(unit('inspections'), unit('staff hours')).unit)).toBe('inspections a staff hour');
  expect(describeUnit(divideUnits(unit('dollars'), unit('hours')).unit)).toBe('dollars an hour');
  expect(describeUnit(divideUnits(unit('washes'), unit('wash units')).unit)).toBe('washes a wash unit');
  expect(describeUnit(divideUnits([], unit('inspections')).unit)).toBe('per inspection');
  expect(describeUnit(divideUnits(unit('minutes'), unit('minutes')).unit)).toBe('');
});

test('a wage by the hour pays staff hours, though hours and staff hours are never added', () => {
  const paid = multiplyUnits(unit('dollars an hour'), unit('staff hours'));
  expect(describeUnit(paid.unit)).toBe('dollars');
  expect(paid.factor).toBe(1);
  expect(conversion(unit('staff hours'), unit('hours'))).toBeNull();
});

test('a unit that cancels in other words brings its factor', () => {
  const { unit: left, factor } = multiplyUnits(unit('dollars an hour'), unit('minutes'));
  expect(describeUnit(left)).toBe('dollars');
  expect(factor).toBeCloseTo(1 / 60, 15);
});

test('percent and per 1,000 are plain numbers', () => {
  expect(readUnit('percent')).toEqual({ unit: [], factor: 1, divisor: 100 });
  expect(readUnit('per 1,000')).toEqual({ unit: [], factor: 1, divisor: 1000 });
});

test('a misspelt unit is told with the nearest known one', () => {
  expect(readUnit('dolars an hour')).toEqual({ unknown: 'dolars', nearest: 'dollars' });
  expect(readUnit('dollars a wsh')).toEqual({ unknown: 'wsh', nearest: 'wash' });
});

test('a unit in words is read back as itself, and there and back changes nothing', () => {
  const word = fc.constantFrom(...unitWords.filter(({ dimension }) => dimension !== 'temperature'));
  fc.assert(
    fc.property(word, word, fc.integer({ min: 1, max: 1000 }), (over, under, value) => {
      const quotient = divideUnits([{ word: over, power: 1 }], [{ word: under, power: 1 }]).unit;
      expect(unit(describeUnit(quotient))).toEqual(quotient);
      const step = conversion([{ word: over, power: 1 }], [{ word: under, power: 1 }]);
      if (step === null) return;
      const back = conversion([{ word: under, power: 1 }], [{ word: over, power: 1 }])!;
      expect(convert(convert(value, step), back)).toBeCloseTo(value, 8);
    }),
    { seed: 5 },
  );
});
