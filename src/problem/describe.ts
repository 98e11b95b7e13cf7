import type { Place, Problem } from './problem.js';

/** A place as `file`, `file:line` or `file:line:column`. */
export function describePlace(place: Place): string {
  if (place.line === 0) return place.file;
  return place.column === null ? `${place.file}:${place.line}` : `${place.file}:${place.line}:${place.column}`;
}

/** A problem as two lines of text: place, what was seen and wanted, code; then the remedy, indented. */
export function describeProblem(problem: Problem): string {
  const field = problem.place.field === null ? '' : ` (${problem.place.field})`;
  const seen = problem.seen === '' ? 'an empty cell' : `"${oneLine(problem.seen)}"`;
  return `${describePlace(problem.place)}${field} ${seen}: wanted ${problem.wanted} [${problem.code}]\n  ${problem.remedy}`;
}

const longestSeen = 100;

/** What was seen, on one line and no longer than a reader needs to find it. */
function oneLine(seen: string): string {
  const text = seen.replace(/\s+/g, ' ');
  return text.length <= longestSeen ? text : `${text.slice(0, longestSeen - 1)}…`;
}
