import type { Element } from 'hast';
import { h } from 'hastscript';

/** A link that saves a text held in the page itself. */
export function downloadLink(
  text: string,
  file: string,
  type: 'text/csv' | 'application/json',
  words: string,
): Element {
  const address = `data:${type};charset=utf-8,${encodeURIComponent(text)}`;
  return h('a', { href: address, download: file, className: ['download'] }, [words]);
}
