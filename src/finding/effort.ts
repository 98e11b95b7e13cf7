import type { Book, BookTable } from '../record/book.js';
import { numberAt } from '../record/column.js';
import { fiellerRatio } from '../statistic/ratio/fieller.js';
import { once } from './book/once.js';
import { countColumn, estimateColumn, keyCells, keyColumns, numberColumn } from './columns.js';
import { countedBy, counting, modelled, type NumberRules, sharing } from './counted-rows.js';
import type { Finding, FindingCell, FindingColumn } from './finding.js';
import { groupRows } from './group-rows.js';
import { bookNumber, countRows, isValue } from './row-tests.js';
import { sentence } from './sentence.js';
import { eventRate, withheld } from './small-numbers.js';

const columns: readonly FindingColumn[] = [
  countColumn('open', 'days open', 'station days', 'Station days on which the station was open.'),
  countColumn('closed', 'days closed', 'station days', 'Station days on which it was closed; closed is not zero.'),
  countColumn('not_recorded', 'days not recorded', 'station days', 'Nobody wrote down whether it was open.'),
  numberColumn(
    'open_hours',
    'open hours',
    'hours',
    'whole',
    'Hours from opening to closing, where both were recorded.',
  ),
  countColumn('with_hours', 'days with staff hours', 'station days', 'Open days whose staff hours were recorded.'),
  numberColumn('staff_hours', 'staff hours', 'staff hours', 'whole', 'Hours worked by all staff on those days.'),
  countColumn('inspections', 'inspections then', 'inspections', 'Inspections on the days with staff hours.'),
  estimateColumn(
    'per_staff_hour',
    'inspections a staff hour',
    'inspections a staff hour',
    'two decimals',
    'Inspections by staff hours, on days that have both.',
  ),
  countColumn('intercepted', 'interceptions then', 'inspections', 'Interceptions on the days with staff hours.'),
  estimateColumn(
    'per_1000_hours',
    'interceptions per 1,000 staff hours',
    'interceptions per 1,000 staff hours',
    'two decimals',
    'Interceptions by thousands of staff hours.',
  ),
];

/** Inspections and interceptions of each station-day, by its number. */
function countsByDay(book: Book): { all: Uint32Array; intercepted: Uint32Array } {
  const inspections = book.tables.get('inspections');
  const all = new Uint32Array(book.clusters.count);
  const intercepted = new Uint32Array(book.clusters.count);
  if (inspections === undefined || inspections.clusterOf === null) return { all, intercepted };
  const isCase = isValue(inspections, 'outcome', 'intercepted');
  inspections.clusterOf.forEach((day, row) => {
    all[day]!++;
    if (isCase(row)) intercepted[day]!++;
  });
  return { all, intercepted };
}

/** The inspections of some station-days, by their numbers. */
function inspectionsOn(book: Book): (days: ReadonlySet<number>) => Uint32Array {
  const clusterOf = book.tables.get('inspections')?.clusterOf ?? null;
  const every = Uint32Array.from(clusterOf ?? [], (_, row) => row);
  return (days) => every.filter((row) => days.has(clusterOf![row]!));
}

/** Which station days, and which inspections on them, stand behind each number of some station days. */
function rulesOf(book: Book, table: BookTable): (rows: Uint32Array) => NumberRules {
  const open = isValue(table, 'state', 'open');
  const [hours, openHours] = [bookNumber(table, 'staff_hours'), bookNumber(table, 'open_hours')];
  const staffed = (row: number): boolean => open(row) && (numberAt(hours, row) ?? 0) > 0;
  const { clusterOf } = table;
  const inspectionsOf = inspectionsOn(book);
  const inspections = book.tables.get('inspections');
  const isCase = inspections === undefined ? () => false : isValue(inspections, 'outcome', 'intercepted');
  const withHours = { words: 'open station days whose staff hours were recorded', holds: staffed };
  const worked = { ...withHours, words: `staff hours of ${withHours.words}`, adds: 'staff_hours' };
  const stateIs = (state: string) =>
    counting({ words: `station days ${state}`, holds: isValue(table, 'state', state) });
  const opened = (row: number): boolean => open(row) && numberAt(openHours, row) !== null;
  return (rows) => {
    const seen = once(() => inspectionsOf(new Set(Array.from(rows.filter(staffed), (row) => clusterOf![row]!))));
    const met = { words: 'inspections on the days with staff hours', table: 'inspections', within: seen };
    const found = { ...met, words: 'interceptions on the days with staff hours', holds: isCase };
    return {
      open: stateIs('open'),
      closed: stateIs('closed'),
      not_recorded: stateIs('not recorded'),
      open_hours: counting({ words: 'open hours of open station days', holds: opened, adds: 'open_hours' }),
      with_hours: counting(withHours),
      staff_hours: counting(worked),
      inspections: counting(met),
      per_staff_hour: sharing(met, worked),
      intercepted: counting(found),
      per_1000_hours: modelled('interceptions by thousands of staff hours, with exact Poisson limits', [], {
        counted: found,
        among: worked,
      }),
    };
  };
}

/** Open hours of some open days, as far as recorded; null where they were recorded on none of them, which is not no hour. */
function openHoursOf(table: BookTable, open: Uint32Array): number | null {
  const column = bookNumber(table, 'open_hours');
  const known = Array.from(open, (row) => numberAt(column, row)).filter((hours) => hours !== null);
  return known.length === 0 && open.length > 0 ? null : known.reduce((sum, hours) => sum + hours, 0);
}

function measure(table: BookTable, rows: Uint32Array, counts: ReturnType<typeof countsByDay>): FindingCell[] {
  const open = rows.filter(isValue(table, 'state', 'open'));
  const hours = bookNumber(table, 'staff_hours');
  const staffed = open.filter((row) => (numberAt(hours, row) ?? 0) > 0);
  const days = Array.from(staffed, (row) => table.clusterOf![row]!);
  const seen = days.map((day) => counts.all[day]!);
  const worked = Array.from(staffed, (row) => numberAt(hours, row)!);
  const [inspections, staffHours] = [seen.reduce((a, b) => a + b, 0), worked.reduce((a, b) => a + b, 0)];
  const intercepted = days.reduce((sum, day) => sum + counts.intercepted[day]!, 0);
  return [
    open.length,
    countRows(rows, isValue(table, 'state', 'closed')),
    countRows(rows, isValue(table, 'state', 'not recorded')),
    openHoursOf(table, open),
    staffed.length,
    staffHours,
    inspections,
    staffHours === 0 ? withheld('no staff hours were recorded') : hourly(seen, worked),
    intercepted,
    staffHours === 0 ? withheld('no staff hours were recorded') : eventRate(intercepted, staffHours / 1000),
  ];
}

/** A ratio of totals over station-days, which vary together. */
function hourly(seen: readonly number[], worked: readonly number[]): FindingCell {
  const [inspections, hours] = [seen.reduce((a, b) => a + b, 0), worked.reduce((a, b) => a + b, 0)];
  const counts = { value: inspections / hours, numerator: inspections, denominator: hours };
  const limits = seen.length < 2 ? null : fiellerRatio(seen, worked).interval;
  const whole = limits !== null && limits.low !== null && limits.high !== null;
  const cautions = seen.length < 20 ? ['under 20 station days'] : [];
  if (!whole) return { ...counts, interval: null, why: 'too few station days for limits', cautions };
  return { ...counts, interval: limits, why: null, cautions };
}

/** What was worked and what it met: open days, hours, inspections and interceptions an hour. */
export const effort: Finding = {
  name: 'effort',
  table: 'station_days',
  account: {
    definition:
      'A station day is a station on a date: open, closed, or not recorded. Rates an hour take only open days whose staff hours were recorded, and the inspections of those days.',
    numerator: 'Inspections, and interceptions, on open days with recorded staff hours.',
    denominator: 'Staff hours of those days.',
    leftOut:
      'Days closed and days not recorded, which are not zero; open days without staff hours, which are never filled in.',
    method:
      'Inspections a staff hour as a ratio of totals over station days with Fieller’s limits; interceptions per 1,000 staff hours with exact Poisson limits. Average, not marginal: one more hour would not find as many.',
    source: 'Fieller 1954, JRSS B 16:175-185; Garwood 1936, Biometrika 28:437-442.',
    formula: 'inspections a staff hour = Σ inspections ÷ Σ staff hours over the same days',
    example: { by: ['station'], options: {} },
  },
  find: (book, table, rows, by) => {
    const counts = countsByDay(book);
    const open = rows.filter(isValue(table, 'state', 'open'));
    const hours = bookNumber(table, 'staff_hours');
    const without = countRows(open, (row) => (numberAt(hours, row) ?? 0) <= 0);
    const groups = groupRows(table, rows, by);
    const rulesFor = rulesOf(book, table);
    const rules = groups.map((group) => once(() => rulesFor(group.rows)));
    return {
      columns: [...keyColumns(table, by), ...columns],
      rows: groups.map(({ key, rows: own }) => [...keyCells(table, by, key), ...measure(table, own, counts)]),
      counted: countedBy((row) => ({ rows: groups[row]!.rows, rules: rules[row]!() })),
      leftOut: sentence(without, 'open day has', 'open days have', 'no staff hours: in no rate an hour.'),
    };
  },
};
