import type { BookTable } from '../../record/book.js';
import type { Records } from '../../record/records.js';
import { numbersOf } from './columns-of.js';
import { numberField } from './derived-fields.js';
import { type FieldSource, lazyTable } from './lazy-table.js';
import { recordedFields } from './recorded-fields.js';

function plainTable(
  records: Records,
  name: 'waterbodies' | 'stations' | 'wash_units' | 'spending',
  counted: string,
  added: readonly FieldSource[],
): BookTable {
  const { definition, rowCount, origin } = records[name];
  const sources = [...recordedFields(records, name), ...added];
  return lazyTable({ name, row: definition.row, counted, rowCount, sources, clusterOf: null, origin });
}

/** The tables whose rows belong to no station-day, as they were recorded. */
export function plainTables(records: Records): BookTable[] {
  const season: FieldSource = {
    field: numberField('season', null, 'The fiscal year it was booked in.'),
    build: () => numbersOf(records.spending, 'fiscal_year'),
  };
  return [
    plainTable(records, 'waterbodies', 'waters', []),
    plainTable(records, 'stations', 'stations', []),
    plainTable(records, 'wash_units', 'wash units', []),
    plainTable(records, 'spending', 'entries', [season]),
  ];
}
