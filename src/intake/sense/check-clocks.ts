import type { FileReading } from '../read-file.js';
import { sayingOf } from '../rules/saying-of.js';
import { noteTogether, positionOf } from '../set-aside.js';

const minute = 60_000;
const halfHour = 30 * minute;
/** Fewer starts than this tell nothing. */
const enough = 100;
/** One start in thirty falls on :00 or :30 by itself; three times as many are noted. */
const expected = 1 / 30;
const tooMany = 3;

/**
 * Notes each station whose starts heap at :00 and :30 in a file, once, at its first kept row; common practice, no source.
 * Minutes are told from Greenwich, since every clock in use but a few oceanic ones runs whole half-hours from it.
 */
export function checkClocks(all: readonly FileReading[]): void {
  for (const reading of all) {
    const { draft } = reading;
    const stations = draft.columns.get('station');
    const starts = draft.columns.get('started_at')?.values;
    if (draft.table.name !== 'inspections' || stations === undefined || starts === undefined) continue;
    const counts = new Map<number, { readonly first: number; starts: number; heaped: number }>();
    for (let row = 0; row < draft.rowCount; row++) {
      if (draft.aside[row] === 1) continue;
      let count = counts.get(stations.values[row]!);
      if (count === undefined) {
        count = { first: row, starts: 0, heaped: 0 };
        counts.set(stations.values[row]!, count);
      }
      count.starts++;
      if (Math.floor(starts[row]! / minute) * minute === Math.floor(starts[row]! / halfHour) * halfHour) count.heaped++;
    }
    for (const [station, count] of counts) {
      if (count.starts < enough || count.heaped <= count.starts * expected * tooMany) continue;
      const name = stations.interner!.textOf(station);
      const reason = `at ${name}, ${count.heaped} of ${count.starts} starts lie at :00 or :30, where one in thirty would`;
      const seen = `${count.heaped} of ${count.starts}`;
      noteTogether(reading, count.first, positionOf(reading, 'started_at'), sayingOf('clock-heaping', reason), seen);
    }
  }
}
