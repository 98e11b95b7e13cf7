/**
 * The day of a date written as year, month, day (`2025-05-01`), as days since 1970-01-01; null for anything else, and for
 * days that the calendar has not. ISO 8601-1, calendar date, extended format.
 */
export function dayOf(text: string): number | null {
  const found = /^(\d{4})-(\d\d)-(\d\d)$/.exec(text);
  if (found === null) return null;
  const [year, month, day] = found.slice(1).map(Number) as [number, number, number];
  const moment = new Date(Date.UTC(year, month - 1, day));
  moment.setUTCFullYear(year);
  const exists = moment.getUTCMonth() === month - 1 && moment.getUTCDate() === day && moment.getUTCFullYear() === year;
  return exists ? moment.getTime() / 86_400_000 : null;
}
