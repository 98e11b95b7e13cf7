import type { TableDefinition } from '../../record/field.js';
import type { FileReading } from '../read-file.js';

/**
 * The keys of a table, by their numbers, that a sound cell holds: of a row of the table, or of one that refers to it. The
 * cells of a ragged row may have slipped, so that what stands in the place of its key may be private.
 */
export function shownKeys(table: TableDefinition, readings: readonly FileReading[]): ReadonlySet<number> {
  const shown = new Set<number>();
  for (const { draft } of readings) {
    const own = draft.table === table ? draft.columns.get(table.key[0]!) : undefined;
    const referring = [...draft.columns.values()].filter(
      ({ field }) => field.type === 'reference' && field.to === table.name,
    );
    for (const { values } of own === undefined ? referring : [own, ...referring]) {
      for (let row = 0; row < draft.rowCount; row++) shown.add(values[row]!);
    }
  }
  return shown;
}
