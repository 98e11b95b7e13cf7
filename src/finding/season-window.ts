import type { BookTable } from '../record/book.js';
import { months } from '../record/calendar-names.js';
import { numberAt } from '../record/column.js';
import { dateOfDay } from './book/calendar.js';
import { bookNumber } from './row-tests.js';

/** A stretch of the calendar that every season has: days as month × 100 + day of the month. */
export interface SeasonWindow {
  readonly from: number;
  readonly to: number;
}

/** The day of the year as month × 100 + day, so that leap years move nothing; null where the date is not known. */
export function calendarDay(table: BookTable): (row: number) => number | null {
  const dates = bookNumber(table, 'date');
  return (row) => {
    const day = numberAt(dates, row);
    if (day === null) return null;
    const { month, dayOfMonth } = dateOfDay(day);
    return month * 100 + dayOfMonth;
  };
}

/** From the latest first day to the earliest last day of the seasons; null where they share none, or there is no season. */
export function sharedWindow(
  seasons: readonly Uint32Array[],
  dayOf: (row: number) => number | null,
): SeasonWindow | null {
  let from = 0;
  let to = 1231;
  for (const rows of seasons) {
    let first = 1232;
    let last = 0;
    for (const row of rows) {
      const day = dayOf(row);
      if (day === null) continue;
      first = Math.min(first, day);
      last = Math.max(last, day);
    }
    from = Math.max(from, first);
    to = Math.min(to, last);
  }
  return seasons.length > 0 && from <= to ? { from, to } : null;
}

/** A day of the calendar in words: `3 March`. */
export function dayInWords(day: number): string {
  return `${day % 100} ${months[Math.floor(day / 100) - 1]}`;
}
