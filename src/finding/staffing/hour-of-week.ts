import type { BookTable } from '../../record/book.js';
import { numberAt } from '../../record/column.js';
import { bookNumber, bookText } from '../row-tests.js';
import type { ShiftDay } from './shift-days.js';

/** Open hours of a station day that reach past midnight: the station day, and the hour of the next day at which they end. */
interface Night {
  readonly cluster: number;
  readonly until: number;
}

/** Hours of a day, and days of a week. */
export const [hoursInDay, daysInWeek] = [24, 7];

/**
 * The hour of the week in which an inspection of some days began, 0 for the first of Monday, by its row; null where it began on
 * none of them. Its day is the station day of its own date, unless that one was not open yet and the hours of the day before
 * reach there: an inspection of half past midnight belongs to the evening's staff, also where the new date has no station day.
 */
export function hourOfWeek(
  table: BookTable,
  inspections: BookTable,
  days: readonly ShiftDay[],
): (row: number) => number | null {
  const { clusterOf } = inspections;
  const weekdayOf = new Map(days.map(({ cluster, weekday }): [number, number] => [cluster, weekday]));
  const hour = bookNumber(inspections, 'hour');
  const onDay = (cluster: number, hourOfDay: number): number | null => {
    const weekday = weekdayOf.get(cluster);
    return weekday === undefined ? null : (weekday * hoursInDay + hourOfDay) % (daysInWeek * hoursInDay);
  };
  const ownDay = (row: number): number | null => {
    const at = numberAt(hour, row);
    return at === null ? null : onDay(clusterOf?.[row] ?? -1, at);
  };
  const { nights, openedAt } = nightsOf(table);
  if (nights.size === 0) return ownDay;
  const station = bookText(inspections, 'station');
  const [date, minute] = ['date', 'minute'].map((name) => bookNumber(inspections, name));
  return (row) => {
    const [on, at] = [numberAt(date!, row), numberAt(hour, row)];
    const night = on === null ? undefined : nights.get(`${on} ${station.dictionary[station.codes[row]!]}`);
    if (at === null || night === undefined) return ownDay(row);
    const began = at + (numberAt(minute!, row) ?? 0) / 60;
    const opened = openedAt.get(clusterOf?.[row] ?? -1);
    const isNight = began < night.until && (opened === undefined || began < opened);
    return isNight ? onDay(night.cluster, hoursInDay + at) : ownDay(row);
  };
}

/** The nights of open station days, by the date they reach into and the station; and when each open day began. */
function nightsOf(table: BookTable): { nights: Map<string, Night>; openedAt: Map<number, number> } {
  const state = bookText(table, 'state');
  const [opened, closed] = ['opened_hour', 'closed_hour'].map((name) => bookNumber(table, name));
  const nights = new Map<string, Night>();
  const openedAt = new Map<number, number>();
  for (let row = 0; row < table.rowCount; row++) {
    if (state.dictionary[state.codes[row]!] !== 'open') continue;
    const cluster = table.clusterOf?.[row] ?? row;
    const [from, to] = [numberAt(opened!, row), numberAt(closed!, row)];
    if (from !== null) openedAt.set(cluster, Math.min(from, openedAt.get(cluster) ?? from));
    if (to === null || to <= hoursInDay) continue;
    const date = numberAt(bookNumber(table, 'date'), row);
    if (date === null) continue;
    const station = bookText(table, 'station');
    const key = `${date + 1} ${station.dictionary[station.codes[row]!]}`;
    nights.set(key, { cluster, until: Math.max(to - hoursInDay, nights.get(key)?.until ?? 0) });
  }
  return { nights, openedAt };
}
