import { dayState } from '../codes.js';
import type { TableDefinition } from '../field.js';
import { code, date, instant, integer, needed, number, reference } from '../fields.js';

/** Closed is not zero, and hours that nobody wrote down are missing, never filled in. */
export const stationDays: TableDefinition = {
  name: 'station_days',
  row: 'a station on a date',
  key: ['station', 'date'],
  fields: [
    needed(reference('station', 'stations', 'The station.')),
    needed(date('date', 'The date, by the station’s own clock.')),
    needed(code('state', dayState, 'Whether the station was open.')),
    instant('opened_at', 'When it opened.'),
    instant('closed_at', 'When it closed.'),
    number('staff_hours', 'staff hours', [0, 500], 'Hours worked by all staff together.'),
    number('staff_cost', 'dollars', [0, 50_000], 'What those hours cost.'),
    integer('bypasses', 'craft', [0, 10_000], 'Craft seen to pass without stopping, where they were counted.'),
  ],
};
