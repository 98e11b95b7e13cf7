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
    // By the number of the station's key: its first kept row, counted from 1, its starts, and those of them that heap.
    const firsts = new Uint32Array(stations.interner!.size);
    const counts = new Uint32Array(firsts.length);
    const heaps = new Uint32Array(firsts.length);
    const met: number[] = [];
    const keys = stations.values;
    for (let row = 0; row < draft.rowCount; row++) {
      if (draft.aside[row] === 1) continue;
      const station = keys[row]!;
      if (firsts[station] === 0) {
        firsts[station] = row + 1;
        met.push(station);
      }
      counts[station]!++;
      if (Math.floor(starts[row]! / minute) * minute === Math.floor(starts[row]! / halfHour) * halfHour)
        heaps[station]!++;
    }
    for (const station of met) {
      const count = counts[station]!;
      const heaped = heaps[station]!;
      if (count < enough || heaped <= count * expected * tooMany) continue;
      const name = stations.interner!.textOf(station);
      const reason = `at ${name}, ${heaped} of ${count} starts lie at :00 or :30, where one in thirty would`;
      const seen = `${heaped} of ${count}`;
      noteTogether(
        reading,
        firsts[station]! - 1,
        positionOf(reading, 'started_at'),
        sayingOf('clock-heaping', reason),
        seen,
      );
    }
  }
}
