import type { BookTable } from '../../record/book.js';
import { numberAt } from '../../record/column.js';
import type { Records } from '../../record/records.js';
import { calendarFields } from './calendar-fields.js';
import { codeOf, numbersOf, textOf } from './columns-of.js';
import { codedField, numberField, numbersByRow } from './derived-fields.js';
import { type FieldSource, lazyTable } from './lazy-table.js';
import { localTimes } from './local-time.js';
import { recordedFields } from './recorded-fields.js';
import { settings, stationSetting } from './station-setting.js';

function openHours(records: Records): FieldSource {
  const table = records.station_days;
  return {
    field: numberField(
      'open_hours',
      'hours',
      'Hours from opening to closing; missing where either was not recorded, and on days that were not open.',
    ),
    build: () => {
      const opened = numbersOf(table, 'opened_at');
      const closed = numbersOf(table, 'closed_at');
      const state = textOf(table, 'state');
      const open = codeOf(state, 'open');
      return numbersByRow(table.rowCount, (row) => {
        const from = numberAt(opened, row);
        const to = numberAt(closed, row);
        return state.codes[row] !== open || from === null || to === null || to < from ? null : (to - from) / 3_600_000;
      });
    },
  };
}

/** The hour of a day's opening or closing by the station's own clock; past 24 where it lies after midnight. */
function clockHour(records: Records, name: string, moment: 'opened_at' | 'closed_at', meaning: string): FieldSource {
  const table = records.station_days;
  return {
    field: numberField(name, null, meaning),
    build: () => {
      const { day, minute } = localTimes(records, table, moment);
      const dates = numbersOf(table, 'date');
      return numbersByRow(table.rowCount, (row) => {
        const date = numberAt(dates, row);
        return date === null || minute[row]! < 0 ? null : (day[row]! - date) * 24 + minute[row]! / 60;
      });
    },
  };
}

/** Station-days with their calendar, setting and open hours. */
export function stationDaysTable(records: Records, clusterOf: () => Uint32Array): BookTable {
  const table = records.station_days;
  const dates = numbersOf(table, 'date');
  return lazyTable({
    name: table.definition.name,
    row: table.definition.row,
    counted: 'station days',
    rowCount: table.rowCount,
    sources: [
      ...recordedFields(records, 'station_days'),
      ...calendarFields(() => ({ day: dates.values, known: (row) => numberAt(dates, row) !== null })),
      {
        field: codedField('setting', settings, 'Where the station stands.'),
        build: () => stationSetting(records, table),
      },
      openHours(records),
      clockHour(
        records,
        'opened_hour',
        'opened_at',
        'The hour at which it opened, by its own clock: 6.5 is half past six.',
      ),
      clockHour(
        records,
        'closed_hour',
        'closed_at',
        'The hour at which it closed, by its own clock; past 24 after midnight.',
      ),
    ],
    clusterOf,
    origin: table.origin,
  });
}
