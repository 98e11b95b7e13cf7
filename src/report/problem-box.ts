import type { Element } from 'hast';
import { h } from 'hastscript';
import { describePlace } from '../problem/describe.js';
import type { Problem } from '../problem/problem.js';

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
      ]),
    ),
  );
}
