import type { Environment } from '../environment.js';
import { conversion, convert } from '../unit/convert.js';
import { type Unit, unitOf } from '../unit/unit.js';
import { unitWord } from '../unit/word.js';
import type { DateValue, Evaluated, NumberValue } from './evaluated.js';
import { calendarDay, dressed } from './plain-value.js';

/** The unit that dates are apart in. */
export const daysUnit = unitOf(unitWord('days')!);

/** A date moved by a time, which moves it by whole days only; a number written out is taken as days. */
export function movedDate(
  date: DateValue,
  by: NumberValue,
  sign: 1 | -1,
  written: boolean,
  environment: Environment,
): Evaluated {
  const days = by.value === null ? null : inDays(by.value, by.unit, written);
  const day = date.day === null || days === null ? null : calendarDay(date.day + sign * days);
  return dressed(day, { kind: 'date' }, [date, by], environment);
}

/** A number of a time as days. */
export function inDays(value: number, unit: Unit, written: boolean): number {
  return written ? value : convert(value, conversion(unit, daysUnit)!);
}

/** The days from one date to another. */
export function daysApart(left: DateValue, right: DateValue, environment: Environment): Evaluated {
  const days = left.day === null || right.day === null ? null : left.day - right.day;
  return dressed(days, { kind: 'number', unit: daysUnit }, [left, right], environment);
}
