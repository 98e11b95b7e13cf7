import type { Formula } from './tree.js';
import type { Evaluated } from './value/evaluated.js';

/** How a name of the notebook is made: its formula (null for a sheet, which has several) and the names it needs. */
export interface Definition {
  readonly formula: Formula | null;
  readonly needs: readonly string[];
}

/** What a notebook decides and how it makes the rest, so that a figure can be asked for with another input. */
export interface Definitions {
  readonly inputs: ReadonlySet<string>;
  readonly made: ReadonlyMap<string, Definition>;
  /** What they give, without the columns of a sheet that may have the same names. */
  readonly values: ReadonlyMap<string, Evaluated>;
}

/** Every name that a figure stands on and that some inputs reach, and the figure itself if they reach it; each behind its needs. */
export function reachedBy(inputs: ReadonlySet<string>, figure: string, { made }: Definitions): readonly string[] {
  const reached = new Map<string, boolean>();
  const visit = (name: string): boolean => {
    if (inputs.has(name)) return true;
    const known = reached.get(name);
    if (known !== undefined) return known;
    // A loop has been told already; whatever is in it counts as not reached.
    reached.set(name, false);
    const needs = made.get(name)?.needs.map(visit) ?? [];
    // Set anew, so that the order of the map is that of need.
    reached.delete(name);
    reached.set(name, needs.includes(true));
    return needs.includes(true);
  };
  visit(figure);
  return [...reached].filter(([, is]) => is).map(([name]) => name);
}
