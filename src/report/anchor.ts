import { textMark } from '../chart/text-mark.js';

/** Text as the page's addresses use it: lower-case letters and digits joined by hyphens; its mark where it has none of them. */
export function slug(text: string): string {
  return wordsOf(text) || textMark(text);
}

function wordsOf(text: string): string {
  return text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
}

/** A name that its address tells from every other of its kind, as most are: `by_station`. */
const ordinaryName = /^[a-z0-9]+([_-][a-z0-9]+)*$/;

/**
 * The address of the part of the page that belongs to a name: `anchor('account', 'interception')` is `account-interception`.
 * Names that differ have addresses that differ: those that a slug would make alike, such as `a__b`, `A_b` and `à_b`, carry
 * their mark behind two hyphens, which no slug has.
 */
export function anchor(part: string, name: string): string {
  const words = wordsOf(name);
  return ordinaryName.test(name) || words === '' ? `${part}-${slug(name)}` : `${part}-${words}--${textMark(name)}`;
}

/** An address from words in plain language, such as a heading: whoever makes several of them holds them apart. */
export function anchorOfWords(part: string, words: string): string {
  return `${part}-${slug(words)}`;
}

/** An address for a long text: its first words, and a mark that tells it from texts that begin alike. */
export function anchorOfText(part: string, text: string): string {
  return `${part}-${slug(text).slice(0, 32).replace(/-$/, '')}-${textMark(text)}`;
}

/** A label at the head of a column: its first letter large. */
export function headed(label: string): string {
  return label.charAt(0).toUpperCase() + label.slice(1);
}

/** A name as readers see it: `cost_each` as `cost each`. */
export function inWords(name: string): string {
  return name.replaceAll('_', ' ');
}
