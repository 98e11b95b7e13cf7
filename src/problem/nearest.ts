import { editDistance } from './edit-distance.js';

/**
 * The known name nearest to a misspelt one, or null when none is near enough to be worth suggesting: at most a third of
 * the longer name's letters may differ, and at least one slip is always allowed, such as two letters swapped. Case is
 * ignored.
 */
export function nearestName(name: string, known: Iterable<string>): string | null {
  return nearestNames(name, known, 1)[0] ?? null;
}

/** The known names that are near enough to a misspelt one, at most so many, the nearest first; near as `nearestName` has it. */
export function nearestNames(name: string, known: Iterable<string>, most: number): readonly string[] {
  const wanted = name.toLowerCase();
  const near: { readonly candidate: string; readonly edits: number }[] = [];
  for (const candidate of known) {
    const allowed = Math.max(1, Math.floor(Math.max(wanted.length, candidate.length) / 3));
    // Words cannot be nearer than their lengths are.
    if (Math.abs(wanted.length - candidate.length) > allowed) continue;
    const edits = editDistance(wanted, candidate.toLowerCase());
    if (edits <= allowed) near.push({ candidate, edits });
  }
  return near
    .sort((one, other) => one.edits - other.edits)
    .slice(0, most)
    .map(({ candidate }) => candidate);
}
