import { waterStatus } from '../codes.js';
import type { TableDefinition } from '../field.js';
import { code, date, needed, text } from '../fields.js';

/** Waters with dated status: what a water was on a day is read as of that day. */
export const waterbodies: TableDefinition = {
  name: 'waterbodies',
  row: 'a water, with its status from a date',
  key: ['waterbody', 'status_from'],
  fields: [
    needed(text('waterbody', 'The short name by which every other table knows the water.')),
    needed(text('name', 'The name shown to readers.')),
    text('region', 'The state or province it lies in.'),
    needed(code('status', waterStatus, 'Its status from that date until the next.')),
    needed(date('status_from', 'The first day of that status.')),
  ],
};
