import type { TableName } from '../../record/field.js';
import { fieldOf } from '../../record/field.js';
import { tableOf } from '../../record/tables.js';

/** The number by which drafts store a code of a field: its place in the code list, from 1. */
export function codeNumber(table: TableName, fieldName: string, code: string): number {
  const field = fieldOf(tableOf(table), fieldName);
  if (field?.type !== 'code') throw new Error(`${table} has no codes ${fieldName}`);
  return field.codes.codes.findIndex((entry) => entry.code === code) + 1;
}
