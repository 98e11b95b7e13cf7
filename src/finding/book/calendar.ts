/** A calendar date in parts; month and day of the month count from 1. */
export interface CalendarDate {
  readonly year: number;
  readonly month: number;
  readonly dayOfMonth: number;
}

/** Milliseconds in a day of 24 hours. */
export const millisecondsPerDay = 86_400_000;

const daysPerEra = 146_097;
/** Days from 0000-03-01 to 1970-01-01 in the proleptic Gregorian calendar. */
const daysToEpoch = 719_468;

/** The date of a day counted from 1970-01-01; Hinnant, "chrono-compatible low-level date algorithms", civil_from_days. */
export function dateOfDay(day: number): CalendarDate {
  const shifted = day + daysToEpoch;
  const era = Math.floor(shifted / daysPerEra);
  const dayOfEra = shifted - era * daysPerEra;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36_524) - Math.floor(dayOfEra / 146_096)) / 365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const marchMonth = Math.floor((5 * dayOfYear + 2) / 153);
  const month = marchMonth < 10 ? marchMonth + 3 : marchMonth - 9;
  return {
    year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0),
    month,
    dayOfMonth: dayOfYear - Math.floor((153 * marchMonth + 2) / 5) + 1,
  };
}

/** The place of a day in its week: 0 for Monday to 6 for Sunday. */
export function weekdayOfDay(day: number): number {
  return (((day + 3) % 7) + 7) % 7;
}

function thursdayOf(day: number): number {
  return day - weekdayOfDay(day) + 3;
}

/** The year that a day's ISO 8601 week belongs to: the one that holds its Thursday. */
export function weekYearOfDay(day: number): number {
  return dateOfDay(thursdayOf(day)).year;
}

/** The ISO 8601 week of a day, 1 to 53, within the year of `weekYearOfDay`. */
export function weekOfDay(day: number): number {
  const newYear = Math.round(Date.UTC(weekYearOfDay(day), 0, 1) / millisecondsPerDay);
  return Math.floor((thursdayOf(day) - newYear) / 7) + 1;
}

/** A day as text: `2025-05-31`. */
export function dayAsText(day: number): string {
  const { year, month, dayOfMonth } = dateOfDay(day);
  return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(dayOfMonth).padStart(2, '0')}`;
}
