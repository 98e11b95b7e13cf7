import { raisedTo } from '../../statistic/raised-to.js';
import type { Unit } from './unit.js';
import type { UnitWord } from './word.js';

/** Takes a value from one unit to another of the same dimensions: value × factor + shift. */
export interface Conversion {
  readonly factor: number;
  readonly shift: number;
}

/** The conversion that leaves a value as it is. */
export const unchanged: Conversion = { factor: 1, shift: 0 };

/** The temperature word of a unit that is a temperature on a scale, and nothing else; null for all others. */
export function temperatureWord(unit: Unit): UnitWord | null {
  const [only] = unit;
  return unit.length === 1 && only!.power === 1 && only!.word.dimension === 'temperature' ? only!.word : null;
}

/** Whether a unit has a temperature on a scale in it, whose zero is arbitrary, so that it cannot be multiplied. */
export function holdsTemperature(unit: Unit): boolean {
  return unit.some(({ word }) => word.dimension === 'temperature');
}

/** How a value in one unit is said in another, exactly; null when they measure different things. */
export function conversion(from: Unit, to: Unit): Conversion | null {
  if (from.length !== to.length) return null;
  const [source, target] = [temperatureWord(from), temperatureWord(to)];
  if (source !== null && target !== null) {
    const factor = source.size / target.size;
    return { factor, shift: target.zero - source.zero * factor };
  }
  let factor = 1;
  for (const { word, power } of from) {
    const other = to.find((candidate) => candidate.word.dimension === word.dimension);
    if (other === undefined || other.power !== power) return null;
    if (other.word.size !== word.size) factor *= raisedTo(word.size / other.word.size, power);
  }
  return { factor, shift: 0 };
}

/** A value after a conversion. */
export function convert(value: number, { factor, shift }: Conversion): number {
  return value * factor + shift;
}

/**
 * A value after a conversion, to 14 significant digits: what it is compared by, since the conversion itself rounds, and 4.1
 * hours are 246 minutes and 140 °F are 60 °C. A value that needs no conversion keeps all its digits.
 */
export function convertToCompare(value: number, step: Conversion): number {
  return step.factor === 1 && step.shift === 0 ? value : Number(convert(value, step).toPrecision(14));
}
