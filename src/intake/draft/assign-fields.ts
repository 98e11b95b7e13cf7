import type { Field, TableDefinition } from '../../record/field.js';
import { type FieldFit, fitField, type KnownColumn } from './field-fit.js';

/** A column given to a field, with how well it fits. */
export interface Assignment {
  readonly column: KnownColumn;
  readonly field: Field;
  readonly fit: FieldFit;
}

/** How much a fit is worth: the heading counts twice, and values that cannot be rule the field out. */
export function worthOf({ heading, values }: FieldFit): number {
  return values <= -0.5 ? 0 : heading * 2 + values;
}

/** Values that tell the field by themselves, whatever the heading says. */
const telling = 0.75;

function mayBe({ heading, values }: FieldFit): boolean {
  return values > -0.5 && (heading >= 0.5 || values >= telling);
}

/**
 * Gives each column at most one field and each field at most one column, the best fits first; a column that fits no field
 * well is left out.
 */
export function assignFields(table: TableDefinition, columns: readonly KnownColumn[]): readonly Assignment[] {
  const all = columns.flatMap((column) =>
    table.fields.map((field): Assignment => ({ column, field, fit: fitField(table, field, column) })),
  );
  const sorted = all.filter(({ fit }) => mayBe(fit)).sort((a, b) => worthOf(b.fit) - worthOf(a.fit));
  const taken = new Set<KnownColumn | Field>();
  return sorted.filter(({ column, field }) => {
    if (taken.has(column) || taken.has(field)) return false;
    taken.add(column);
    taken.add(field);
    return true;
  });
}
