import type { Result } from '../formula/result.js';
import type { BookField } from '../record/book.js';

/** A group's key as a cell: text by its label, numbers and dates as they are, `not recorded` for the missing group. */
export function keyResult(field: BookField, value: string | number | null): Result {
  if (value === null) return { kind: 'missing', why: 'not recorded' };
  if (field.kind === 'date' && typeof value === 'number') return { kind: 'date', day: value };
  if (typeof value === 'number') {
    const nothing = { numerator: null, denominator: null, interval: null, why: null, cautions: [] };
    return { kind: 'number', value, unit: '', ...nothing };
  }
  const label = field.labels?.get(value);
  return label === undefined ? { kind: 'text', text: value } : { kind: 'text', text: label, code: value };
}

/** A name as a table's head shows it: `last_status` reads `last status`. */
export function labelOf(name: string): string {
  return name.replaceAll('_', ' ');
}
