import type { Formula } from '../formula/tree.js';
import type { Knowledge } from './workings.js';

/**
 * The key of a formula's value: its text, the keys of all that it names, how it is resampled and, in a sheet, the keys of
 * the columns before it and of the groups it is asked for.
 */
export function formulaKey(
  formula: Formula,
  { memory, keys, environment }: Knowledge,
  columns: ReadonlyMap<string, string> = new Map(),
  groups = '',
): string {
  const { count, seed } = environment.resamples;
  return memory.formulaKey(formula, (name) => columns.get(name) ?? keys.get(name), `${count} ${seed}`, groups);
}
