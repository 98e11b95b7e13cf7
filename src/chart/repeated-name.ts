import type { Unfit } from './chart-kind.js';

/** What is wrong where two rows would be drawn in one place; null where every name stands once. */
export function repeatedName(names: readonly string[], word: string): Unfit | null {
  const repeated = names.find((name, at) => names.indexOf(name) !== at);
  if (repeated === undefined) return null;
  return {
    code: 'rows-share-a-place',
    seen: repeated,
    wanted: 'rows that the chart can tell apart',
    remedy: `Several rows are named "${repeated}": name them by another column with "${word}=", or split them with "by=".`,
  };
}
