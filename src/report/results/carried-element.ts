import type { Element } from 'hast';
import { h } from 'hastscript';

/** The names of what pages carry about themselves. */
export type CarriedName = 'carried-results' | 'carried-changes' | 'carried-folder';

const type = 'application/json';

/** A value as JSON that a page carries and nothing runs; the text cannot end its own element. */
export function carriedElement(name: CarriedName, value: object): Element {
  return h('script', { id: name, type }, [carriedText(value)]);
}

/** The text of such an element. */
export function carriedText(value: object): string {
  return JSON.stringify(value).replaceAll('<', '\\u003c');
}

/** The text that a page carries under a name; null where it carries none. */
export function carriedIn(html: string, name: CarriedName): string | null {
  const opening = `<script id="${name}" type="${type}">`;
  const from = html.indexOf(opening);
  const to = html.indexOf('</script>', from);
  return from < 0 || to < 0 ? null : html.slice(from + opening.length, to);
}
