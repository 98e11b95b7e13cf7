import type { RecordSets } from './record-sets.js';

/** The sets that the cells of one column of a sheet tell of, of which none overlap. */
export type Groups = readonly number[];

/** A set with those groups of one column that lie within it; `isAll` where together they are all of it. */
export interface Containment {
  readonly whole: number;
  readonly members: readonly number[];
  readonly isAll: boolean;
}

/** For every set and every column, the groups of the column that lie within the set. */
export function containments(sets: RecordSets, groups: readonly Groups[]): readonly Containment[] {
  const { of, count } = sets.parts();
  const found: Containment[] = [];
  const inWhole = new Uint8Array(count);
  of.forEach((parts, whole) => {
    for (const part of parts) inWhole[part] = 1;
    for (const group of groups) {
      const members = group.filter((member) => member !== whole && of[member]!.every((part) => inWhole[part] === 1));
      if (members.length === 0) continue;
      const covered = members.reduce((total, member) => total + sets.sizeOf(member), 0);
      found.push({ whole, members, isAll: covered === sets.sizeOf(whole) });
    }
    for (const part of parts) inWhole[part] = 0;
  });
  return found;
}
