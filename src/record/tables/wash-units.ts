import { unitKind } from '../codes.js';
import type { TableDefinition } from '../field.js';
import { code, date, needed, number, reference, text } from '../fields.js';

/** Wash units and what they cost. */
export const washUnits: TableDefinition = {
  name: 'wash_units',
  row: 'a portable or fixed unit',
  key: ['unit'],
  fields: [
    needed(text('unit', 'The short name by which wash records know it.')),
    needed(code('kind', unitKind, 'Portable or fixed.')),
    reference('station', 'stations', 'Where it stands.'),
    number('capital_cost', 'dollars', [0, 5_000_000], 'What it cost to buy.'),
    date('in_service_on', 'The day it went into service.'),
    number('expected_life', 'years', [0.5, 60], 'How long it is expected to serve.'),
    number('running_cost', 'dollars a wash', [0, 5_000], 'What one wash costs in fuel, water and wear.'),
  ],
};
