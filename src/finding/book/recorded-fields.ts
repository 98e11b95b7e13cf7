import type { BookField } from '../../record/book.js';
import type { Field, TableName } from '../../record/field.js';
import type { Records } from '../../record/records.js';
import type { FieldSource } from './lazy-table.js';
import { keyNames } from './places.js';

const kindOf = {
  text: 'text',
  pseudonym: 'text',
  code: 'text',
  reference: 'text',
  number: 'number',
  integer: 'number',
  date: 'date',
  instant: 'instant',
} as const satisfies Record<Field['type'], BookField['kind']>;

/** A recorded field as the book shows it; a table's own key is named as references to it are. */
function bookField(records: Records, table: TableName, field: Field): BookField {
  const base = { name: field.name, kind: kindOf[field.type], unit: null, codes: null, labels: null };
  const { meaning } = field;
  if (field.type === 'code') return { ...base, codes: field.codes.codes.map(({ code }) => code), meaning };
  if (field.type === 'number' || field.type === 'integer') return { ...base, unit: field.unit, meaning };
  if (field.type === 'reference') return { ...base, ...keyNames(records, field.to), meaning };
  const isKey = field.name === records[table].definition.key[0];
  return isKey ? { ...base, ...keyNames(records, table), meaning } : { ...base, meaning };
}

/** Every field of a table as it was recorded. */
export function recordedFields(records: Records, table: TableName): FieldSource[] {
  const { definition, columns } = records[table];
  return definition.fields.map((field) => ({
    field: bookField(records, table, field),
    build: () => {
      const column = columns.get(field.name);
      if (column === undefined) throw new Error(`the records of ${table} lack the field ${field.name}`);
      return column;
    },
  }));
}
