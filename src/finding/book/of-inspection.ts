import type { BookTable, ParentTable } from '../../record/book.js';
import { gather } from './gather.js';
import type { FieldSource } from './lazy-table.js';

/** Every field of the inspection that each row belongs to. */
export function fieldsOfInspection(inspections: BookTable, parentOf: () => Int32Array): FieldSource[] {
  return [...inspections.fields.values()].map((field) => ({
    field,
    build: () => gather(inspections.column(field.name), parentOf()),
  }));
}

/** The station-day of the inspection that each row belongs to. */
export function clustersOfInspection(inspections: BookTable, parentOf: () => Int32Array): () => Uint32Array {
  return () => {
    const of = inspections.clusterOf!;
    const parents = parentOf();
    const clusters = new Uint32Array(parents.length);
    for (let row = 0; row < clusters.length; row++) clusters[row] = of[parents[row]!]!;
    return clusters;
  };
}

/** The inspections as the table that gives rows those of its fields that they have not themselves. */
export function inspectionsGive(
  inspections: BookTable,
  own: readonly FieldSource[],
  parentOf: () => Int32Array,
): ParentTable {
  const owned = new Set(own.map(({ field }) => field.name));
  return {
    table: inspections,
    gives: (field) => inspections.fields.has(field) && !owned.has(field),
    rowOf: parentOf,
  };
}
