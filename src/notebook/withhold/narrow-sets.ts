import type { Containment } from './containments.js';
import type { RecordSets } from './record-sets.js';

/** A hidden set whose number is known too narrowly, and the shown sets by which it is, those within others first. */
export interface NarrowSet {
  readonly hidden: number;
  readonly by: readonly number[];
}

/** What the number of each set is known to lie between. */
interface Bounds {
  readonly least: Float64Array;
  readonly most: Float64Array;
}

/** Bounds come closer by ever less; whatever is still open after this many rounds is wide. */
const mostRounds = 60;

/**
 * The hidden sets whose number anybody could tell to less than `fewest`, by adding up what is shown of a set and of the
 * groups within it, over and over until nothing more follows (Buzzigoli and Giusti 1999, the shuttle algorithm; from memory).
 */
export function narrowSets(
  sets: RecordSets,
  columns: readonly Containment[],
  isShown: (number: number) => boolean,
  hidden: readonly number[],
  fewest: number,
): readonly NarrowSet[] {
  const open = columns.filter(({ whole, members }) => !isShown(whole) || members.some((member) => !isShown(member)));
  const bounds = boundsBy(open, sets, isShown);
  const bySize = (one: number, other: number): number => sets.sizeOf(one) - sets.sizeOf(other);
  return hidden.flatMap((number): NarrowSet[] => {
    if (bounds.most[number]! - bounds.least[number]! >= fewest) return [];
    const own = open.filter(({ whole, members }) => whole === number || members.includes(number));
    const within = own.flatMap(({ members }) => members.filter(isShown)).sort(bySize);
    const around = own.flatMap(({ whole }) => (whole !== number && isShown(whole) ? [whole] : [])).sort(bySize);
    return [{ hidden: number, by: [...new Set([...within, ...around])].filter((one) => sets.sizeOf(one) > 0) }];
  });
}

function boundsBy(columns: readonly Containment[], sets: RecordSets, isShown: (number: number) => boolean): Bounds {
  const least = new Float64Array(sets.count);
  const most = new Float64Array(sets.count).fill(Number.POSITIVE_INFINITY);
  for (let number = 0; number < sets.count; number++) {
    // None at all is told, by 0 or by there being no row.
    if (isShown(number) || sets.sizeOf(number) === 0) least[number] = most[number] = sets.sizeOf(number);
  }
  let changed = true;
  const raise = (number: number, to: number): void => {
    if (to <= least[number]!) return;
    least[number] = to;
    changed = true;
  };
  const lower = (number: number, to: number): void => {
    if (to >= most[number]!) return;
    most[number] = to;
    changed = true;
  };
  for (let round = 0; changed && round < mostRounds; round++) {
    changed = false;
    for (const { whole, members, isAll } of columns) {
      const low = members.reduce((total, number) => total + least[number]!, 0);
      const high = members.reduce((total, number) => total + most[number]!, 0);
      raise(whole, low);
      if (isAll) lower(whole, high);
      for (const number of members) {
        lower(number, most[whole]! - (low - least[number]!));
        if (!isAll) continue;
        const others = members.reduce((total, other) => (other === number ? total : total + most[other]!), 0);
        if (Number.isFinite(others)) raise(number, least[whole]! - others);
      }
    }
  }
  return { least, most };
}
