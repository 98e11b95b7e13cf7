import { textMark } from '../chart/text-mark.js';

/** A name as the page's addresses use it: lower-case letters and digits joined by hyphens. */
export function slug(name: string): string {
  const words = name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  return words === '' ? textMark(name) : words;
}

/** The address of the part of the page that belongs to a name: `anchor('account', 'interception')` is `account-interception`. */
export function anchor(part: string, name: string): string {
  return `${part}-${slug(name)}`;
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
