import { weekdays } from '../../record/calendar-names.js';
import { numberAt } from '../../record/column.js';
import { quantile } from '../../statistic/quantile.js';
import { once } from '../book/once.js';
import { countColumn, numberColumn, wordColumn } from '../columns.js';
import { type CountedGroup, countedBy, counting, modelled, type NumberRules } from '../counted-rows.js';
import type { Finding, FindingCell, FindingColumn } from '../finding.js';
import { bookNumber } from '../row-tests.js';
import { sentence } from '../sentence.js';
import { daysInWeek, hourOfWeek, hoursInDay } from './hour-of-week.js';
import { shiftDays } from './shift-days.js';

const columns: readonly FindingColumn[] = [
  wordColumn('weekday', 'weekday', 'The day of the week, by the station’s own clock.'),
  { ...numberColumn('hour', 'hour', null, 'whole', 'The hour of the day, by the station’s own clock.'), names: true },
  countColumn('days', 'days', 'station days', 'Station days that were open for at least half of the hour.'),
  numberColumn('staff_hours', 'staff hours', 'staff hours', 'whole', 'Staff hours in it, each day’s spread evenly.'),
  countColumn('craft', 'inspections', 'inspections', 'Inspections of every kind begun in it on these days.'),
  numberColumn('an_hour', 'an hour of staff', 'inspections a staff hour', 'two decimals', 'Inspections a staff hour.'),
  numberColumn(
    'in_use',
    'in use',
    null,
    'percent',
    'Minutes of inspections begun in the hour by minutes of staff there, as if one person looked over one craft.',
  ),
];

/** When craft come and when staff are there: inspections and staff hours by weekday and hour. */
export const staffedHours: Finding = {
  name: 'staffed hours',
  table: 'station_days',
  account: {
    definition: 'Inspections and staff hours in each hour of each weekday, over the station days asked of.',
    numerator: 'Inspections begun in the hour, and their minutes.',
    denominator: 'Staff hours of the same days, spread evenly from opening to closing.',
    leftOut:
      'Closed days, days without staff hours or times; inspections of those days and of dates without a station day. One begun before its own date opened, while the day before was still open, is the day before’s.',
    method:
      'Counts and their ratios. An inspection without a finish counts with the median minutes of the others. The share in use takes one person a craft: where two look over a craft it is twice as high.',
    source: 'common practice, no source',
    formula: 'in use = Σ minutes of inspections ÷ (60 × Σ staff hours)',
    example: { by: [], options: {} },
  },
  find: (book, table, rows) => {
    const { watches, days, unusable } = shiftDays(table, rows, 1);
    const inspections = book.tables.get('inspections')!;
    const minutes = bookNumber(inspections, 'minutes');
    const size = daysInWeek * hoursInDay;
    const [open, staff, craft, taken] = Array.from({ length: 4 }, () => new Float64Array(size));
    // Past midnight the clock and the weekday go on.
    const placeAt = (weekday: number, hourOfDay: number): number => (weekday * hoursInDay + hourOfDay + size) % size;
    const placeOf = hourOfWeek(table, inspections, days);
    for (const { weekday, open: hours, crew } of days) {
      watches.forEach(({ from }, watch) => {
        if (hours[watch]! === 0) return;
        const at = placeAt(weekday, from);
        open![at]!++;
        staff![at]! += crew * hours[watch]!;
      });
    }
    const usual = usualMinutes(minutes.values);
    for (let row = 0; row < inspections.rowCount; row++) {
      const place = placeOf(row);
      if (place === null) continue;
      craft![place]!++;
      taken![place]! += numberAt(minutes, row) ?? usual;
    }
    const cells = Array.from({ length: size }, (_, place): FindingCell[] => {
      const [worked, seen] = [staff![place]!, craft![place]!];
      return [
        weekdays[Math.floor(place / hoursInDay)]!,
        place % hoursInDay,
        open![place]!,
        worked,
        seen,
        worked === 0 ? null : seen / worked,
        worked === 0 ? null : taken![place]! / (60 * worked),
      ];
    });
    const begunAt = once(() =>
      byHour(inspections.rowCount, (row) => {
        const place = placeOf(row);
        return place === null ? [] : [place];
      }),
    );
    const openAt = once(() =>
      byHour(days.length, (at) => {
        const { weekday, open: hours } = days[at]!;
        return watches.flatMap(({ from }, watch) => (hours[watch]! > 0 ? placeAt(weekday, from) : []));
      }),
    );
    const behind = (place: number): CountedGroup => {
      const open = openAt()[place]!.map((at) => days[at]!.row);
      return { rows, rules: rulesOf(open, begunAt()[place]!) };
    };
    const places = Array.from({ length: size }, (_, place) => place).filter((place) => open![place]! > 0);
    const hours = places.map((place) => once(() => behind(place)));
    return {
      columns,
      rows: places.map((place) => cells[place]!),
      counted: countedBy((row) => hours[row]!()),
      leftOut: [
        ...sentence(unusable, 'open day has', 'open days have', 'no staff hours or no times: in no hour.'),
        ...sentence(
          cells.reduce((sum, _, place) => sum + (open![place]! > 0 ? 0 : craft![place]!), 0),
          'inspection was',
          'inspections were',
          'begun in an hour in which no station was open for half: in no hour here.',
        ),
      ],
    };
  },
};

/** Numbers below some, gathered by the place of each among the hours of a week. */
function byHour(count: number, placesOf: (number: number) => readonly number[]): readonly (readonly number[])[] {
  const found = Array.from({ length: daysInWeek * hoursInDay }, (): number[] => []);
  for (let number = 0; number < count; number++) for (const place of placesOf(number)) found[place]!.push(number);
  return found;
}

/** Which station days, and which inspections, stand behind each number of an hour. */
function rulesOf(days: readonly number[], inspections: readonly number[]): NumberRules {
  const open = { words: 'station days open for half of the hour', within: () => Uint32Array.from(days) };
  const begun = {
    words: 'inspections begun in the hour on station days with staff hours and times',
    table: 'inspections',
    within: () => Uint32Array.from(inspections),
  };
  const spread = 'each day’s staff hours spread evenly from opening to closing';
  return {
    days: counting(open),
    staff_hours: modelled(spread, [open]),
    craft: counting(begun),
    an_hour: modelled(`inspections by staff hours, ${spread}`, [begun, open]),
    in_use: modelled(`minutes of inspections by those of staff, ${spread}`, [begun, open]),
  };
}

function usualMinutes(minutes: Float64Array | Int32Array): number {
  const known = Float64Array.from(minutes)
    .filter((length) => length > 0)
    .sort();
  return quantile(known, 0.5) ?? 0;
}
