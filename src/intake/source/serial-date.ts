import { dayLength, dayNumber } from '../calendar.js';

/** The two ways of counting days in sheets: from the last day of 1899, or from the first of 1904. */
export type SerialBase = 1900 | 1904;

const from1904 = dayNumber(1904, 1, 1);
const from1899 = dayNumber(1899, 12, 31);
const daySeconds = dayLength / 1000;

/** A moment of the wall clock, to the second. */
export interface SerialMoment {
  /** Days since 1970-01-01. */
  readonly day: number;
  readonly second: number;
}

/**
 * The moment that a serial number stands for, rounded to the second; null where the calendar has none. Counting from 1900,
 * day 60 is a 29 February that the year 1900 never had, and every later number is one too high for the days that passed
 * (ECMA-376 part 1, 18.17.4.1).
 */
export function serialMoment(serial: number, base: SerialBase): SerialMoment | null {
  if (!Number.isFinite(serial) || serial < (base === 1900 ? 1 : 0) || serial > 2_958_465) return null;
  const seconds = Math.round(serial * daySeconds);
  const count = Math.floor(seconds / daySeconds);
  const second = seconds - count * daySeconds;
  if (base === 1904) return { day: from1904 + count, second };
  if (count === 60) return null;
  return { day: from1899 + (count > 60 ? count - 1 : count), second };
}
