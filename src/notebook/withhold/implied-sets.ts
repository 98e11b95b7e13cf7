import { type Containment, containments, type Groups } from './containments.js';
import { type RecordSets, without } from './record-sets.js';
import { isFew } from './told-value.js';

/**
 * The numbers of sets of few records that stand nowhere on the page and yet would follow from what does: what one set has
 * beyond another within it, and what a set has beyond the groups of a column.
 */
export function impliedSets(sets: RecordSets, groups: readonly Groups[], fewest: number): readonly number[] {
  const columns = containments(sets, groups);
  const rests = [...differences(sets, fewest), ...columns.flatMap((column) => restOf(column, sets, fewest))];
  return [...new Set(rests.map((rows) => sets.numberOf(rows)))];
}

function restOf({ whole, members }: Containment, sets: RecordSets, fewest: number): readonly Uint32Array[] {
  const covered = members.reduce((total, member) => total + sets.sizeOf(member), 0);
  if (!isFew(sets.sizeOf(whole) - covered, fewest)) return [];
  const others = members.map((member) => sets.rowsOf(member));
  return [without(sets.rowsOf(whole), others)];
}

function differences(sets: RecordSets, fewest: number): readonly Uint32Array[] {
  const { of, count } = sets.parts();
  const bySize = of.map((_, number) => number).sort((one, other) => sets.sizeOf(one) - sets.sizeOf(other));
  const inWhole = new Uint8Array(count);
  return bySize.flatMap((whole, at) => {
    for (const part of of[whole]!) inWhole[part] = 1;
    const found: Uint32Array[] = [];
    for (let below = at - 1; below >= 0; below--) {
      const within = bySize[below]!;
      const beyond = sets.sizeOf(whole) - sets.sizeOf(within);
      if (beyond >= fewest) break;
      if (beyond === 0 || sets.sizeOf(within) === 0) continue;
      if (of[within]!.every((part) => inWhole[part] === 1)) {
        found.push(without(sets.rowsOf(whole), [sets.rowsOf(within)]));
      }
    }
    for (const part of of[whole]!) inWhole[part] = 0;
    return found;
  });
}
