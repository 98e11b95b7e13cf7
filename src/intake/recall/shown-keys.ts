import type { TableDefinition } from '../../record/field.js';
import type { FileReading } from '../read-file.js';

/**
 * Which keys of a table a sound cell holds, by their numbers: of a row of the table, or of one that refers to it; 1 for yes,
 * and nothing for missing. The cells of a ragged row may have slipped, so that what stands in the place of its key may be
 * private.
 */
export function shownKeys(table: TableDefinition, readings: readonly FileReading[], size: number): Uint8Array {
  const shown = new Uint8Array(size);
  for (const { draft } of readings) {
    for (const { field, values } of draft.columns.values()) {
      const isOwn = draft.table === table && field.name === table.key[0];
      if (!isOwn && (field.type !== 'reference' || field.to !== table.name)) continue;
      for (let row = 0; row < draft.rowCount; row++) shown[values[row]!] = 1;
    }
  }
  shown[0] = 0;
  return shown;
}
