import type { Element } from 'hast';
import { h } from 'hastscript';

/** A link that saves a text held in the page itself. */
export function downloadLink(
  text: string,
  file: string,
  type: 'text/csv' | 'application/json',
  words: string,
): Element {
  // A comma is most of what a table is made of, and needs no writing otherwise behind the first.
  const address = `data:${type};charset=utf-8,${encodeURIComponent(text).replaceAll('%2C', ',')}`;
  return h('a', { href: address, download: file, className: ['download'] }, [words]);
}
