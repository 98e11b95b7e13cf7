import { editDistance } from './edit-distance.js';

/**
 * The known name nearest to a misspelt one, or null when none is near enough to be worth suggesting: at most a third of
 * the longer name's letters may differ, and at least one slip is always allowed, such as two letters swapped. Case is
 * ignored.
 */
export function nearestName(name: string, known: Iterable<string>): string | null {
  const wanted = name.toLowerCase();
  let best: string | null = null;
  let fewest = Number.POSITIVE_INFINITY;
  for (const candidate of known) {
    const edits = editDistance(wanted, candidate.toLowerCase());
    const allowed = Math.max(1, Math.floor(Math.max(wanted.length, candidate.length) / 3));
    if (edits <= allowed && edits < fewest) {
      best = candidate;
      fewest = edits;
    }
  }
  return best;
}
