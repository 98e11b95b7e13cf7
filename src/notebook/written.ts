import type { Cell } from './document.js';

/** Where a part of a notebook stands in its text: lines from 1, both included. */
export interface WrittenPart {
  readonly first: number;
  readonly last: number;
  /** The cells of the pipe table at its end, a list a row, heads first, mistaken rows included; null without one. */
  readonly table: readonly (readonly Cell[])[] | null;
}
