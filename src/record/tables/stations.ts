import { setting } from '../codes.js';
import type { TableDefinition } from '../field.js';
import { code, integer, needed, reference, text } from '../fields.js';

/** Stations, with the clock by which their days are counted. */
export const stations: TableDefinition = {
  name: 'stations',
  row: 'a place where craft are inspected',
  key: ['station'],
  fields: [
    needed(text('station', 'The short name by which every other table knows the place.')),
    needed(text('name', 'The name shown to readers.')),
    needed(code('setting', setting, 'Where the place stands.')),
    reference('waterbody', 'waterbodies', 'The water it guards, where it stands at one.'),
    integer('lanes', 'lanes', [1, 50], 'How many craft can be inspected at once.'),
    needed(text('time_zone', 'The IANA time zone of its clocks, such as America/Denver.')),
    text('season_opens', 'Month and day on which its season usually opens.', '\\d\\d-\\d\\d'),
    text('season_closes', 'Month and day on which its season usually closes.', '\\d\\d-\\d\\d'),
  ],
};
