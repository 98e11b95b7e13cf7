import type { Element } from 'hast';
import { h } from 'hastscript';
import { anchorOfText, anchorOfWords, headed } from '../anchor.js';
import { definitionList, type Entry } from '../definition-list.js';
import { methodsPageName } from '../methods-page-name.js';
import { type Term, terms } from './terms.js';
import { termsWords as words } from './terms-words.js';

/** Every term with its source: what stands on the page of methods. */
export function allTerms(): Element[] {
  const entries = terms.map(({ name, meaning, source }): Entry => {
    const from = h('span', { className: ['small'] }, [`${words.source}: ${source}`]);
    return [headed(name), h('span', { id: anchorOfWords('term', name) }, [`${meaning} `, from])];
  });
  return [h('p', [words.about]), definitionList(entries)];
}

/** The terms that a page uses, each leading to its place on the page of methods. */
export function termsOfPage(used: readonly Term[]): Element[] {
  const entries = used.map(({ name, meaning }): Entry => [headed(name), meaning]);
  return [
    h('p', [h('a', { href: `${methodsPageName}#${anchorOfText('section', words.title)}` }, [words.onPage])]),
    definitionList(entries),
  ];
}
