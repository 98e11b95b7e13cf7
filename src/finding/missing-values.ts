import type { BookTable } from '../record/book.js';
import { tables } from '../record/tables.js';
import { countColumn, keyCells, keyColumns, numberColumn, wordColumn } from './columns.js';
import type { Finding, FindingColumn } from './finding.js';
import { groupRows } from './group-rows.js';
import { countRows } from './row-tests.js';

const columns: readonly FindingColumn[] = [
  wordColumn('field', 'field', 'The recorded field, as formulas name it.'),
  countColumn('rows', 'rows', 'rows', 'The rows asked.'),
  countColumn('missing', 'missing', 'rows', 'Rows on which nothing was recorded in that field.'),
  numberColumn('missing_share', 'share missing', null, 'percent', 'Missing by rows.'),
];

function isMissing(table: BookTable, field: string): (row: number) => boolean {
  const column = table.column(field);
  if (column.kind === 'text') return (row) => column.codes[row] === 0;
  if (column.kind === 'number') return (row) => column.missing !== null && column.missing[row] === 1;
  throw new Error(`${field} is not recorded but derived`);
}

/** How often each recorded field of a table was left empty. */
function missingValuesOf(table: string, fields: readonly string[]): Finding {
  return {
    name: 'missing values',
    table,
    account: {
      definition: 'A value is missing where nothing was recorded, whatever the form allowed: blank, or not asked.',
      numerator: 'Rows without a value in the field.',
      denominator: 'All rows asked.',
      leftOut:
        'Rows set aside when the exports were read. Fields that derive from others. Some fields are only asked of some rows: a check that found nothing has no finding.',
      method: 'A count of what was recorded; no interval.',
      source: 'common practice, no source',
      formula: 'share missing = missing ÷ rows',
      example: { by: [], options: {} },
    },
    find: (_book, bookTable, rows, by) => ({
      columns: [...keyColumns(bookTable, by), ...columns],
      rows: groupRows(bookTable, rows, by).flatMap(({ key, rows: own }) =>
        fields.map((field) => {
          const missing = countRows(own, isMissing(bookTable, field));
          const share = own.length === 0 ? null : missing / own.length;
          return [...keyCells(bookTable, by, key), field, own.length, missing, share];
        }),
      ),
      leftOut: [],
    }),
  };
}

/** One finding a table; all have the same name. */
export const missingValues: readonly Finding[] = tables.map(({ name, fields }) =>
  missingValuesOf(
    name,
    fields.map((field) => field.name),
  ),
);
