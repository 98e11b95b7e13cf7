import type { Mistake } from '../place.js';
import { type Conversion, conversion, temperatureWord, unchanged } from './convert.js';
import { nameUnit, type Unit, unitOf } from './unit.js';
import { type UnitWord, unitWords } from './word.js';

/** The unit of a sum or difference, and what each side must be taken through first. */
export interface UnitSum {
  readonly unit: Unit;
  readonly left: Conversion;
  readonly right: Conversion;
}

function differenceOf(temperature: UnitWord): Unit {
  const word = unitWords.find(
    ({ dimension, size }) => dimension === 'temperature difference' && size === temperature.size,
  );
  return unitOf(word!);
}

/** What units that measure different things are told at a comparison, sum or choice. */
export function unitsDiffer(left: Unit, right: Unit): Mistake {
  return {
    code: 'units-differ',
    wanted: `the same kind of unit on both sides, not ${nameUnit(left)} and ${nameUnit(right)}`,
    remedy: 'Make both sides measure the same thing, or give a plain number its unit by making it an input.',
  };
}

/**
 * The unit of left + right or left − right, in the left one's words. Two temperatures give a difference and can only be
 * subtracted; a difference can be added to a temperature.
 */
export function sumUnits(operator: '+' | '-', left: Unit, right: Unit): UnitSum | Mistake {
  const [leftDegrees, rightDegrees] = [temperatureWord(left), temperatureWord(right)];
  if (leftDegrees !== null && rightDegrees !== null) {
    if (operator === '-') {
      return { unit: differenceOf(leftDegrees), left: unchanged, right: conversion(right, left)! };
    }
    const remedy = 'Two temperatures can only be subtracted.';
    return { code: 'units-differ', wanted: 'a temperature difference', remedy };
  }
  const target = leftDegrees === null ? left : differenceOf(leftDegrees);
  const taken = conversion(right, target);
  return taken === null ? unitsDiffer(left, right) : { unit: left, left: unchanged, right: taken };
}
