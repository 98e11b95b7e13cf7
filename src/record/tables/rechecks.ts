import type { TableDefinition } from '../field.js';
import { instant, needed, pseudonym, reference } from '../fields.js';
import { lookFields } from './checks.js';

/** Blind second looks, from which detection is estimated. */
export const rechecks: TableDefinition = {
  name: 'rechecks',
  row: 'one component, one side, looked at again by an inspector who had not seen the first result',
  key: ['inspection', 'component', 'side'],
  fields: [
    needed(reference('inspection', 'inspections', 'The inspection that was checked again.')),
    ...lookFields,
    instant('rechecked_at', 'When the second look was made.'),
    pseudonym('inspector', 'Stands for the second inspector.'),
  ],
};
