import type { NotebookWorkings } from './workings.js';

/** The names of a notebook that each of its figures, selections and sheets is made of, nearest only. */
export function needsOf({ names, sheets }: NotebookWorkings): ReadonlyMap<string, readonly string[]> {
  return new Map([
    ...[...names].map(([name, { needs }]) => [name, needs] as const),
    ...[...sheets].map(([name, { needs, ofRows }]) => [name, [...new Set([...needs, ...ofRows])]] as const),
  ]);
}
