import type { BookTable } from '../record/book.js';
import { tables } from '../record/tables.js';
import { countColumn, keyCells, keyColumns, numberColumn, wordColumn } from './columns.js';
import { countedBy, counting, sharing } from './counted-rows.js';
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
    find: (_book, bookTable, rows, by) => {
      const all = { words: 'all rows' };
      const ofFields = fields.map((field) => {
        const empty = { words: `rows without a value of ${field}`, holds: isMissing(bookTable, field) };
        const rules = { rows: counting(all), missing: counting(empty), missing_share: sharing(empty, all) };
        return { field, empty, rules };
      });
      const found = groupRows(bookTable, rows, by).flatMap(({ key, rows: own }) =>
        ofFields.map(({ field, empty, rules }) => {
          const missing = countRows(own, empty.holds);
          const share = own.length === 0 ? null : missing / own.length;
          return { cells: [...keyCells(bookTable, by, key), field, own.length, missing, share], rows: own, rules };
        }),
      );
      return {
        columns: [...keyColumns(bookTable, by), ...columns],
        rows: found.map(({ cells }) => cells),
        counted: countedBy((row) => found[row]!),
        leftOut: [],
      };
    },
  };
}

/** One finding a table; all have the same name. */
export const missingValues: readonly Finding[] = tables.map(({ name, fields }) =>
  missingValuesOf(
    name,
    fields.map((field) => field.name),
  ),
);
