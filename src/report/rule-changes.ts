import type { Element } from 'hast';
import { h } from 'hastscript';
import type { RuleChange } from '../record/file-sum.js';
import { tableElement } from './table.js';
import { words } from './words.js';

/** The rules of the intake that crosswalks set otherwise than usual, each with its reason; nothing where there are none. */
export function ruleChanges(changes: readonly RuleChange[]): readonly Element[] {
  if (changes.length === 0) return [];
  return [
    tableElement({
      id: 'rules-set-otherwise',
      caption: words.rulesCaption,
      heads: 2,
      head: [words.rule, words.crosswalk, words.usually, words.here, words.reasonGiven].map((content) => ({ content })),
      rows: changes.map(({ code, crosswalk, usual, set, limits, because }) => [
        { content: code.replaceAll('-', ' ') },
        { content: [h('code', [crosswalk])] },
        { content: usual },
        { content: limits === '' ? set : `${set}: ${limits}` },
        { content: because },
      ]),
    }),
  ];
}
