import type { ElementContent } from 'hast';
import { type Term, terms } from './terms.js';

/** The terms that some elements use, in alphabetical order: whole words, in their text and not in code. */
export function termsUsed(elements: readonly ElementContent[]): readonly Term[] {
  const text = elements
    .map(textOf)
    .join(' ')
    .toLowerCase()
    .replace(/[\s-]+/g, ' ');
  return terms.filter(({ name, forms }) => [name, ...forms].some((form) => stands(form, text)));
}

/** Whether a form stands in a text as whole words, itself or in the plural. */
function stands(form: string, text: string): boolean {
  const words = form.toLowerCase().replace(/[\s-]+/g, ' ');
  // Most terms are not there at all, which is quickly seen.
  if (!text.includes(words)) return false;
  const pattern = words.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
  return new RegExp(`(?<![\\p{L}\\d])${pattern}(?:s|es)?(?![\\p{L}\\d])`, 'u').test(text);
}

function textOf(node: ElementContent): string {
  if (node.type === 'text') return node.value;
  if (node.type !== 'element' || ['code', 'svg', 'script'].includes(node.tagName)) return '';
  return node.children.map(textOf).join(' ');
}
