import type { Conversion } from './crosswalk.js';

const same: Conversion = { factor: 1, shift: 0 };
const times = (factor: number): Conversion => ({ factor, shift: 0 });

/** From each unit a file may be in to the unit of the field; exact by definition (NIST SP 811, appendix B). */
const conversions: Readonly<Record<string, Readonly<Record<string, Conversion>>>> = {
  feet: { metres: times(1 / 0.3048), centimetres: times(1 / 30.48), inches: times(1 / 12) },
  'degrees F': { 'degrees C': { factor: 1.8, shift: 32 } },
  minutes: { hours: times(60), seconds: times(1 / 60) },
  seconds: { minutes: times(60) },
  'staff hours': { 'staff minutes': times(1 / 60), minutes: times(1 / 60), hours: same },
  years: { months: times(1 / 12) },
  dollars: { cents: times(0.01), 'thousand dollars': times(1000) },
};

/** How each unit may be spelt beside a number, in small letters; a full stop behind it is left off. Common practice. */
export const unitSpellings: Readonly<Record<string, readonly string[]>> = {
  feet: ['ft', 'feet', 'foot', "'", '′', '’'],
  inches: ['in', 'inch', 'inches', '"', '″', '”', "''"],
  metres: ['m', 'metre', 'metres', 'meter', 'meters'],
  centimetres: ['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'],
  'degrees F': ['°f', '° f', 'f', 'deg f', 'degf', 'degrees f', 'fahrenheit'],
  'degrees C': ['°c', '° c', 'c', 'deg c', 'degc', 'degrees c', 'celsius'],
  hours: ['h', 'hr', 'hrs', 'hour', 'hours'],
  minutes: ['min', 'mins', 'minute', 'minutes'],
  seconds: ['s', 'sec', 'secs', 'second', 'seconds'],
  years: ['y', 'yr', 'yrs', 'year', 'years'],
  months: ['mo', 'mos', 'month', 'months'],
  dollars: ['$', 'usd', 'dollar', 'dollars'],
  cents: ['¢', 'ct', 'cts', 'cent', 'cents'],
};

const spelt = new Map(Object.entries(unitSpellings).flatMap(([unit, words]) => words.map((word) => [word, unit])));

/** The units that a file may give for a field in that unit, its own among them. */
export function unitsFor(fieldUnit: string): readonly string[] {
  return [fieldUnit, ...Object.keys(conversions[fieldUnit] ?? {})];
}

/** How numbers in a file's unit become numbers in the field's; null where they cannot. */
export function conversionTo(fieldUnit: string, fileUnit: string): Conversion | null {
  return fileUnit === fieldUnit ? same : (conversions[fieldUnit]?.[fileUnit] ?? null);
}

/** The unit that is spelt so beside a number; null for none. */
export function unitSpelt(spelling: string): string | null {
  return spelt.get(spelling.toLowerCase().replace(/\.$/u, '').replace(/\s+/gu, ' ')) ?? null;
}
