import type { NumberField } from '../../record/field.js';
import { conversionTo, converted, isSameUnit, unitsFor } from '../units.js';
import { wordsOf } from './heading.js';

/** Words and letters in a heading that tell a unit. */
const told: Readonly<Record<string, readonly string[]>> = {
  metres: ['m', 'metre', 'metres', 'meter', 'meters', 'mtr'],
  centimetres: ['cm'],
  inches: ['inch', 'inches'],
  feet: ['ft', 'foot', 'feet'],
  'degrees C': ['c', 'celsius', 'degc'],
  'degrees F': ['f', 'fahrenheit', 'degf'],
  hours: ['h', 'hr', 'hrs', 'hours'],
  minutes: ['min', 'mins', 'minutes'],
  seconds: ['s', 'sec', 'secs', 'seconds'],
  cents: ['cents'],
  months: ['months'],
};

/** A unit for the numbers of a column, and whether its heading tells it. */
export interface UnitGuess {
  readonly unit: string;
  readonly isTold: boolean;
}

function shareWithin(numbers: readonly number[], field: NumberField, unit: string): number {
  const conversion = conversionTo(field.unit, unit);
  if (conversion === null || numbers.length === 0) return 0;
  const within = numbers.filter((number) => {
    const value = converted(number, conversion);
    return value >= field.least && value <= field.most;
  });
  return within.length / numbers.length;
}

/** The unit that a heading tells, or else the field's own where its bounds hold most of the numbers; null for neither. */
export function guessUnit(heading: string, numbers: readonly number[], field: NumberField): UnitGuess | null {
  const words = wordsOf(heading);
  const units = unitsFor(field.unit);
  const named = units.find((unit) => told[unit]?.some((word) => words.includes(word)));
  if (named !== undefined && shareWithin(numbers, field, named) >= 0.8) {
    return { unit: isSameUnit(conversionTo(field.unit, named)!) ? field.unit : named, isTold: true };
  }
  return shareWithin(numbers, field, field.unit) >= 0.8 ? { unit: field.unit, isTold: false } : null;
}
