import { months, weekdays } from '../../record/calendar-names.js';
import type { NumberColumn, TextColumn } from '../../record/column.js';
import { dateOfDay, weekdayOfDay, weekOfDay } from './calendar.js';
import { codedColumn, codedField, numberField, numbersByRow } from './derived-fields.js';
import type { FieldSource } from './lazy-table.js';

/** The local day of each row, and which rows have none. */
export interface Days {
  readonly day: Int32Array | Float64Array;
  readonly known: (row: number) => boolean;
}

function codesByDay(days: Days, codeOfDay: (day: number) => number): Uint8Array {
  const codes = new Uint8Array(days.day.length);
  for (let row = 0; row < codes.length; row++) if (days.known(row)) codes[row] = codeOfDay(days.day[row]!);
  return codes;
}

function numbersByDay(days: Days, numberOfDay: (day: number) => number): NumberColumn {
  return numbersByRow(days.day.length, (row) => (days.known(row) ? numberOfDay(days.day[row]!) : null));
}

/** Season, month, week and weekday of each row's local day. */
export function calendarFields(days: () => Days): FieldSource[] {
  return [
    {
      field: numberField('season', null, 'The year, by the station’s own clock.'),
      build: (): NumberColumn => numbersByDay(days(), (day) => dateOfDay(day).year),
    },
    {
      field: codedField('month', months, 'The month, by the station’s own clock.'),
      build: (): TextColumn =>
        codedColumn(
          months,
          codesByDay(days(), (day) => dateOfDay(day).month),
        ),
    },
    {
      field: numberField(
        'week',
        null,
        'The ISO 8601 week, 1 to 53; the first days of January may lie in week 52 or 53.',
      ),
      build: (): NumberColumn => numbersByDay(days(), weekOfDay),
    },
    {
      field: codedField('weekday', weekdays, 'The day of the week, by the station’s own clock.'),
      build: (): TextColumn =>
        codedColumn(
          weekdays,
          codesByDay(days(), (day) => weekdayOfDay(day) + 1),
        ),
    },
  ];
}
