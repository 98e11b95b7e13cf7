import type { Element } from 'hast';
import { h } from 'hastscript';
import { sectionFor } from '../../formula/language-sections.js';
import type { Cell } from '../../notebook/document.js';
import type { Problem } from '../../problem/problem.js';
import { languagePageName } from '../language-page-name.js';
import { deskWords } from './words.js';

/** Problems in words, to stand right where they are; nothing for none. */
export function wrongElements(problems: readonly Problem[]): readonly Element[] {
  return problems.map((problem) => {
    const { seen, wanted, remedy } = problem;
    const section = sectionFor(problem);
    // In a window of its own, so that nobody leaves what they are writing.
    const away = { target: '_blank', rel: 'noopener' };
    const reference =
      section === null ? [] : [' ', h('a', { href: `${languagePageName}#${section.id}`, ...away }, [section.title])];
    return h('p', { className: ['wrong'] }, [`${deskWords.wanted(seen, wanted)} ${remedy}`, ...reference]);
  });
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
