import type { Element } from 'hast';
import { h } from 'hastscript';
import { words } from './words.js';

/** A list of links to the page's sections, in their order. */
export function contentsList(
  entries: readonly { readonly id: string; readonly text: string; readonly depth: 2 | 3 }[],
): Element {
  return h('nav', { className: ['contents'], ariaLabelledBy: 'contents' }, [
    h('h2', { id: 'contents' }, [words.contents]),
    h(
      'ol',
      entries.filter((entry) => entry.depth === 2).map(({ id, text }) => h('li', [h('a', { href: `#${id}` }, [text])])),
    ),
  ]);
}
