import { numberColumn, textColumn } from '../../record/column.js';
import { numberField } from './derived-fields.js';
import type { FieldSource } from './lazy-table.js';

/** A field of texts, one a row. */
export function textSource(name: string, meaning: string, texts: readonly string[]): FieldSource {
  return {
    field: { name, kind: 'text', unit: null, codes: null, labels: null, meaning },
    build: () => textColumn(texts),
  };
}

/** A field of counts, one a row. */
export function countSource(name: string, unit: string, meaning: string, counts: readonly number[]): FieldSource {
  return { field: numberField(name, unit, meaning), build: () => numberColumn(counts) };
}
