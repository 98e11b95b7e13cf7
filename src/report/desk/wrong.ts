import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Cell } from '../../notebook/document.js';
import type { Problem } from '../../problem/problem.js';
import { deskWords } from './words.js';

/** Problems in words, to stand right where they are; nothing for none. */
export function wrongElements(problems: readonly Problem[]): readonly Element[] {
  return problems.map(({ seen, wanted, remedy }) =>
    h('p', { className: ['wrong'] }, [`${deskWords.wanted(seen, wanted)} ${remedy}`]),
  );
}

/** Hands out a notebook's problems by place, each once, so that none is shown twice and none is lost. */
export class ProblemsByPlace {
  private readonly left: Set<Problem>;

  constructor(problems: readonly Problem[]) {
    this.left = new Set(problems);
  }

  /** Those within a cell. */
  inCell({ line, column, text }: Cell): readonly Problem[] {
    return this.take(
      ({ place }) =>
        place.line === line && place.column !== null && place.column >= column && place.column <= column + text.length,
    );
  }

  /** Those on lines from `first` to `last`. */
  onLines(first: number, last: number): readonly Problem[] {
    return this.take(({ place }) => place.line >= first && place.line <= last);
  }

  /** Whatever has not been handed out. */
  rest(): readonly Problem[] {
    return this.take(() => true);
  }

  private take(here: (problem: Problem) => boolean): readonly Problem[] {
    const found = [...this.left].filter(here);
    for (const problem of found) this.left.delete(problem);
    return found;
  }
}
