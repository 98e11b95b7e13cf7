import type { BookTable } from '../../record/book.js';
import { weekdays } from '../../record/calendar-names.js';
import { numberAt } from '../../record/column.js';
import { bookNumber, bookText } from '../row-tests.js';

/** A stretch of hours by the clock, the same on every day: from 6 to 10. */
export interface Watch {
  readonly from: number;
  readonly to: number;
}

/** A station open on a day, with the watches it was open for and the hours its staff worked. */
export interface ShiftDay {
  /** Its row of the station days. */
  readonly row: number;
  readonly station: string;
  /** The place of the weekday, from Monday. */
  readonly weekday: number;
  readonly cluster: number;
  /** Hours that it was open in each watch; 0 where that was less than half of the watch. */
  readonly open: readonly number[];
  /** Staff present, on average over the day. */
  readonly crew: number;
}

/** Station-days that shifts can be planned from, and how many open ones cannot be used. */
export interface ShiftDays {
  /** Hours of a watch. */
  readonly shift: number;
  readonly watches: readonly Watch[];
  readonly days: readonly ShiftDay[];
  readonly unusable: number;
}

/** Watches of so many hours that cover a day from 6 o'clock on, the last one in the night. */
function watchesOf(hours: number): readonly Watch[] {
  const before = Math.ceil(6 / hours);
  const first = 6 - before * hours;
  const count = Math.ceil((30 - first) / hours);
  return Array.from({ length: count }, (_, at) => ({ from: first + at * hours, to: first + (at + 1) * hours })).filter(
    ({ to }) => to > 0,
  );
}

/** The hours of a watch between opening and closing; none where they are less than half of it. */
function overlap({ from, to }: Watch, opened: number, closed: number): number {
  const hours = Math.max(0, Math.min(to, closed) - Math.max(from, opened));
  return hours * 2 >= to - from ? hours : 0;
}

/** The open days among some rows of station days, cut into watches of so many hours by the station's own clock. */
export function shiftDays(table: BookTable, rows: Uint32Array, hours: number): ShiftDays {
  const [station, state, weekday] = ['station', 'state', 'weekday'].map((name) => bookText(table, name)) as [
    ReturnType<typeof bookText>,
    ReturnType<typeof bookText>,
    ReturnType<typeof bookText>,
  ];
  const [staff, opened, closed] = ['staff_hours', 'opened_hour', 'closed_hour'].map((name) => bookNumber(table, name));
  const watches = watchesOf(hours);
  const days: ShiftDay[] = [];
  let unusable = 0;
  for (const row of rows) {
    if (state.dictionary[state.codes[row]!] !== 'open') continue;
    const [worked, from, to] = [numberAt(staff!, row), numberAt(opened!, row), numberAt(closed!, row)];
    if (worked === null || from === null || to === null || !(worked > 0 && to > from)) {
      unusable++;
      continue;
    }
    days.push({
      row,
      station: station.dictionary[station.codes[row]!]!,
      weekday: weekdays.indexOf(weekday.dictionary[weekday.codes[row]!]!),
      cluster: table.clusterOf?.[row] ?? row,
      open: watches.map((watch) => overlap(watch, from, to)),
      crew: worked / (to - from),
    });
  }
  return { shift: hours, watches, days, unusable };
}
