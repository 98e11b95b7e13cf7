import { dateOfDay, weekdayOfDay } from '../../finding/book/calendar.js';
import { months, weekdays } from '../../record/calendar-names.js';
import { dayOf } from '../day.js';
import { plain, unitOf } from '../unit/unit.js';
import { unitWord } from '../unit/word.js';
import type { PlainFunction } from './declaration.js';

const ofOneDate = {
  works: 'on values',
  more: false,
  arguments: [{ name: 'date', takes: 'date' }],
} satisfies Partial<PlainFunction>;

/** The year of a date. */
export const yearOf: PlainFunction = {
  ...ofOneDate,
  name: 'year_of',
  gives: 'a plain number',
  meaning: 'The year of a date. A season is the year of the station’s own day: the field `season` holds it.',
  example: 'year_of("2025-05-01")',
  result: { kind: 'number', unit: plain },
  each: (day) => dateOfDay(Number(day)).year,
};

/** The month of a date by its name. */
export const monthOf: PlainFunction = {
  ...ofOneDate,
  name: 'month_of',
  gives: 'a text: January to December',
  meaning: 'The month of a date by its name, as the field `month` has it.',
  example: 'month_of("2025-05-01")',
  result: { kind: 'text', codes: months, text: null },
  each: (day) => months[dateOfDay(Number(day)).month - 1]!,
};

/** The day of the week of a date by its name. */
export const weekdayOf: PlainFunction = {
  ...ofOneDate,
  name: 'weekday_of',
  gives: 'a text: Monday to Sunday',
  meaning: 'The day of the week of a date by its name, as the field `weekday` has it.',
  example: 'weekday_of("2025-05-01")',
  result: { kind: 'text', codes: weekdays, text: null },
  each: (day) => weekdays[weekdayOfDay(Number(day))]!,
};

/** The day of the month of a date. */
export const dayOfMonth: PlainFunction = {
  ...ofOneDate,
  name: 'day_of_month',
  gives: 'a plain number from 1 to 31',
  meaning: 'The day of the month of a date.',
  example: 'day_of_month("2025-05-01")',
  result: { kind: 'number', unit: plain },
  each: (day) => dateOfDay(Number(day)).dayOfMonth,
};

/** A date from its parts. */
export const dateOf: PlainFunction = {
  works: 'on values',
  more: false,
  name: 'date_of',
  arguments: [
    { name: 'year', takes: 'number' },
    { name: 'month', takes: 'number' },
    { name: 'day', takes: 'number' },
  ],
  gives: 'a date',
  meaning: 'The date of a year, a month from 1 to 12 and a day; missing where the calendar has no such day.',
  example: 'date_of(2025, 5, 1)',
  result: { kind: 'date' },
  each: (year, month, day) => {
    const part = (number: string | number | undefined, digits: number) => String(number).padStart(digits, '0');
    return dayOf(`${part(year, 4)}-${part(month, 2)}-${part(day, 2)}`);
  },
};

/** The days from one date to another. */
export const daysBetween: PlainFunction = {
  works: 'on values',
  more: false,
  name: 'days_between',
  arguments: [
    { name: 'from', takes: 'date' },
    { name: 'to', takes: 'date' },
  ],
  gives: 'a number of days',
  meaning: 'The days from one date to a later one, below 0 where it is earlier; the same as subtracting the dates.',
  example: 'days_between("2025-05-01", "2025-09-30")',
  result: { kind: 'number', unit: unitOf(unitWord('days')!) },
  each: (from, to) => Number(to) - Number(from),
};
