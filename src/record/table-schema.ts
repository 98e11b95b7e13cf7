import type { Field, TableDefinition } from './field.js';
import { tables } from './tables.js';

const schemaTypes: Record<Field['type'], string> = {
  text: 'string',
  pseudonym: 'string',
  code: 'string',
  reference: 'string',
  number: 'number',
  integer: 'integer',
  date: 'date',
  instant: 'datetime',
};

function describeField(field: Field): object {
  const constraints: Record<string, unknown> = {};
  if (field.required) constraints.required = true;
  if (field.type === 'code') constraints.enum = field.codes.codes.map(({ code }) => code);
  if (field.type === 'text' && field.pattern !== undefined) constraints.pattern = field.pattern;
  if (field.type === 'number' || field.type === 'integer') {
    constraints.minimum = field.least;
    constraints.maximum = field.most;
  }
  return {
    name: field.name,
    type: schemaTypes[field.type],
    description: field.meaning,
    ...('unit' in field ? { unit: field.unit } : {}),
    ...(Object.keys(constraints).length > 0 ? { constraints } : {}),
  };
}

function describeTable(table: TableDefinition): object {
  return {
    fields: table.fields.map(describeField),
    primaryKey: table.key,
    foreignKeys: table.fields
      .filter((field) => field.type === 'reference')
      .map((field) => ({
        fields: [field.name],
        reference: { resource: field.to, fields: [tables.find(({ name }) => name === field.to)!.key[0]] },
      })),
    missingValues: [''],
  };
}

/** All canonical tables as one Data Package descriptor with a Table Schema a table (Frictionless Data Package v2). */
export function dataPackage(): object {
  return {
    $schema: 'https://datapackage.org/profiles/2.0/datapackage.json',
    name: 'rampbook-records',
    resources: tables.map((table) => ({
      name: table.name,
      path: `${table.name}.csv`,
      description: `One row is ${table.row}.`,
      schema: describeTable(table),
    })),
  };
}
