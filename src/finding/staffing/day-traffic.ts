import type { Book } from '../../record/book.js';
import { numberAt } from '../../record/column.js';
import { bookNumber, isValue } from '../row-tests.js';
import type { ShiftDays } from './shift-days.js';

/** Full inspections of each day, and in which of its watches they began. */
export interface DayTraffic {
  readonly full: number;
  readonly intercepted: number;
  /** One a watch. */
  readonly inWatch: readonly number[];
}

/** Traffic day by day, and the full inspections that fell into no watch that a shift could be planned for. */
export interface Traffic {
  readonly days: readonly DayTraffic[];
  readonly outside: number;
  /** The full inspections of some days, by their numbers: all of them, or those that began in one watch. */
  readonly fullOn: (days: ReadonlySet<number>, watch: number | null) => Uint32Array;
  readonly isCase: (row: number) => boolean;
}

/** The full inspections of the days, by the station's own clock. */
export function dayTraffic(book: Book, { watches, days }: ShiftDays): Traffic {
  const table = book.tables.get('inspections')!;
  const hour = bookNumber(table, 'hour');
  const isFull = isValue(table, 'extent', 'full');
  const isCase = isValue(table, 'outcome', 'intercepted');
  const dayOf = new Map(days.map(({ cluster }, at) => [cluster, at]));
  const full = new Uint32Array(days.length);
  const cases = new Uint32Array(days.length);
  const inWatch = days.map(() => new Array<number>(watches.length).fill(0));
  let outside = 0;
  const { clusterOf, rowCount } = table;
  /** The watch in which an inspection of a day began, if a shift could be planned for it; −1 otherwise. */
  const watchAt = (row: number, day: number): number => {
    const at = numberAt(hour, row);
    // A watch that runs past midnight begins the hours of the next day; those are counted with the day they fall on.
    const watch = at === null ? -1 : watches.findIndex(({ from, to }) => at >= from && at < to);
    return watch >= 0 && days[day]!.open[watch]! > 0 ? watch : -1;
  };
  // Each full inspection of the days: its row, its day, and its watch.
  const [rows, dayOfRow, watchOfRow] = [[] as number[], [] as number[], [] as number[]];
  for (let row = 0; row < rowCount; row++) {
    const day = isFull(row) ? dayOf.get(clusterOf?.[row] ?? -1) : undefined;
    if (day === undefined) continue;
    const watch = watchAt(row, day);
    rows.push(row);
    dayOfRow.push(day);
    watchOfRow.push(watch);
    full[day]!++;
    if (isCase(row)) cases[day]!++;
    if (watch >= 0) inWatch[day]![watch]!++;
    else outside++;
  }
  return {
    days: days.map((_, day) => ({ full: full[day]!, intercepted: cases[day]!, inWatch: inWatch[day]! })),
    outside,
    isCase,
    fullOn: (wanted, watch) =>
      Uint32Array.from(
        rows.filter((_, at) => (watch === null || watchOfRow[at] === watch) && wanted.has(dayOfRow[at]!)),
      ),
  };
}
