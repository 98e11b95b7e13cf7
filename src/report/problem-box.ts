import type { Element } from 'hast';
import { h } from 'hastscript';
import { sectionFor } from '../formula/language-sections.js';
import { describePlace } from '../problem/describe.js';
import type { Problem } from '../problem/problem.js';
import { languagePageName } from './language-page-name.js';

/** Where the language's reference helps to mend it, as a link. */
function reference(problem: Problem): (string | Element)[] {
  const section = sectionFor(problem);
  return section === null ? [] : [' ', h('a', { href: `${languagePageName}#${section.id}` }, [section.title])];
}

/** Problems in the place where they show: a plain box with place, what was seen and wanted, and the remedy of each. */
export function problemBox(problems: readonly Problem[]): Element {
  return h(
    'div',
    { className: ['problems'] },
    problems.map((problem) =>
      h('p', [
        h('strong', [describePlace(problem.place)]),
        problem.seen === '' ? ' (empty)' : ` “${problem.seen}”`,
        `: wanted ${problem.wanted}. `,
        problem.remedy,
        ' ',
        h('code', [problem.code]),
        ...reference(problem),
      ]),
    ),
  );
}
