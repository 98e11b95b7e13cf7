import type { Conversion } from './crosswalk.js';

const same: Conversion = { factor: 1, divisor: 1, shift: 0 };
const times = (factor: number): Conversion => ({ ...same, factor });
const per = (divisor: number): Conversion => ({ ...same, divisor });

/** From each unit a file may be in to the unit of the field; exact by definition (NIST SP 811, appendix B). */
const conversions: Readonly<Record<string, Readonly<Record<string, Conversion>>>> = {
  feet: { metres: per(0.3048), centimetres: per(30.48), inches: per(12) },
  'degrees F': { 'degrees C': { factor: 9, divisor: 5, shift: 32 } },
  minutes: { hours: times(60), seconds: per(60) },
  seconds: { minutes: times(60) },
  'staff hours': { 'staff minutes': per(60), minutes: per(60), hours: same },
  years: { months: per(12) },
  dollars: { cents: per(100), 'thousand dollars': times(1000) },
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

/** Numbers are converted to the billionth of a unit: no export tells less. */
const billion = 1e9;

/** A number in a file's unit as one in the field's. What is whole by definition is whole, though 0.3048 is not held exactly. */
export function converted(number: number, { factor, divisor, shift }: Conversion): number {
  return Math.round(((number * factor) / divisor + shift) * billion) / billion;
}

/** Whether numbers stay as they are. */
export function isSameUnit({ factor, divisor, shift }: Conversion): boolean {
  return factor === divisor && shift === 0;
}

/** The unit that is spelt so beside a number; null for none. */
export function unitSpelt(spelling: string): string | null {
  return spelt.get(spelling.toLowerCase().replace(/\.$/u, '').replace(/\s+/gu, ' ')) ?? null;
}
