import { standing, type Texts } from './key-space.js';
import type { FileReading } from './read-file.js';
import type { Saying } from './remark.js';
import { positionOf, remarkOn } from './set-aside.js';

function dangling(field: string, table: string): Saying {
  return {
    code: 'unknown-reference',
    reason: `${field} names none of the ${table.replaceAll('_', ' ')} that were read`,
    remedy: 'Mend the cell, say under codes in the crosswalk which it stands for, or import the file that lists it.',
  };
}

/** What is said of a row whose parent was set aside. */
export function following(field: string, table: string): Saying {
  return {
    code: 'parent-set-aside',
    reason: `the row of ${table.replaceAll('_', ' ')} that ${field} names was set aside`,
    remedy: 'Mend that row, and this one follows.',
  };
}

/** Sets aside every row that refers to a row which is not there, or which was itself set aside. */
export function checkLinks(readings: readonly FileReading[], texts: Texts): void {
  for (const reading of readings) {
    const { draft } = reading;
    for (const column of draft.columns.values()) {
      const { field } = column;
      if (field.type !== 'reference') continue;
      const space = texts.spaceOf(field.to);
      const standings = space.standings();
      const { values } = column;
      const position = positionOf(reading, field.name);
      const followed = following(field.name, field.to);
      const dangled = dangling(field.name, field.to);
      for (let row = 0; row < draft.rowCount; row++) {
        const code = values[row]!;
        if (code === 0 || standings[code] === standing.kept) continue;
        remarkOn(reading, row, position, standings[code] === standing.setAside ? followed : dangled);
      }
    }
  }
}

/** Marks the keys of a table's rows, kept or set aside, for the tables that refer to it. */
export function markKeys(readings: readonly FileReading[], texts: Texts): void {
  for (const { draft } of readings) {
    const { table } = draft;
    const key = draft.columns.get(table.key[0]!);
    // A look is named by its inspection: nothing refers to it.
    if (key === undefined || texts.keyTableOf(table.name, key.field) !== table.name) continue;
    const space = texts.spaceOf(table.name);
    for (const code of draft.lostKeys) space.mark(code, standing.setAside);
    space.markRows(key.values as Uint32Array, draft.aside, draft.rowCount);
  }
}
