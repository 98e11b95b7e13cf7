import type { TableName } from '../../record/field.js';
import { tables } from '../../record/tables.js';
import { following } from '../check-links.js';
import type { FileReading } from '../read-file.js';
import { positionOf, remarkOn } from '../set-aside.js';

/**
 * Sets aside the rows that belong to rows set aside since a moment, given as how many remarks each reading had then; parents
 * come before their children, so that a grandchild follows too.
 */
export function followParents(all: readonly FileReading[], remarksBefore: ReadonlyMap<FileReading, number>): void {
  const gone = new Map<TableName, Set<number>>();
  for (const table of tables) {
    for (const reading of all) {
      const { draft } = reading;
      if (draft.table !== table) continue;
      for (const { field, values } of draft.columns.values()) {
        const parents = field.type === 'reference' ? gone.get(field.to) : undefined;
        if (parents === undefined || field.type !== 'reference') continue;
        for (let row = 0; row < draft.rowCount; row++) {
          if (draft.aside[row] === 1 || !parents.has(values[row]!)) continue;
          remarkOn(reading, row, positionOf(reading, field.name), following(field.name, field.to));
        }
      }
      const keys = draft.columns.get(table.key[0]!);
      // Only a key of its own lets other rows refer to a row: a look is named by its inspection, and nothing by the look.
      if (keys === undefined || table.key.length > 1) continue;
      const { remarks } = reading;
      for (let at = remarksBefore.get(reading) ?? 0; at < remarks.size; at++) {
        const row = remarks.row(at);
        if (row === null || !remarks.setsAside(at)) continue;
        if (!gone.has(table.name)) gone.set(table.name, new Set());
        gone.get(table.name)!.add(keys.values[row]!);
      }
    }
  }
}
