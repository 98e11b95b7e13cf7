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

/** The units that a file may give for a field in that unit, its own among them. */
export function unitsFor(fieldUnit: string): readonly string[] {
  return [fieldUnit, ...Object.keys(conversions[fieldUnit] ?? {})];
}

/** How numbers in a file's unit become numbers in the field's; null where they cannot. */
export function conversionTo(fieldUnit: string, fileUnit: string): Conversion | null {
  return fileUnit === fieldUnit ? same : (conversions[fieldUnit]?.[fileUnit] ?? null);
}
