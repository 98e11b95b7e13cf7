import type { Element, ElementContent } from 'hast';
import { hatchedWithLines } from '../chart/craft/hatch-lines.js';
import type { Paper } from './style/paper.js';

/**
 * Elements as the command prints them: accounts open where they are wanted, and no link to what is not printed, nor to
 * another file, since it would lead to where that file lay on the machine that printed it; drawn craft hatched by lines, since
 * browsers print patterns as images.
 */
export function onPaper(elements: readonly ElementContent[], paper: Paper): ElementContent[] {
  const ids = new Set<string>();
  noteIds(elements, paper, ids);
  return elements.map((element) => settled(element, paper, ids));
}

function settled(element: ElementContent, paper: Paper, ids: ReadonlySet<string>): ElementContent {
  if (element.type !== 'element') return element;
  if (has(element, 'drawn')) return hatchedWithLines(element);
  const children = element.children.map((child) => settled(child, paper, ids));
  const { properties } = element;
  if (paper.accounts && isAccount(element)) return { ...element, properties: { ...properties, open: true }, children };
  const href = element.tagName === 'a' && typeof properties.href === 'string' ? properties.href : null;
  const leads = href === null || /^https?:/.test(href) || (href.startsWith('#') && ids.has(href.slice(1)));
  return leads ? { ...element, children } : { ...element, tagName: 'span', properties: {}, children };
}

/** The ids that are printed. */
function noteIds(elements: readonly ElementContent[], paper: Paper, ids: Set<string>): void {
  for (const element of elements) {
    if (element.type !== 'element' || (!paper.accounts && (isAccount(element) || has(element, 'workings')))) continue;
    if (typeof element.properties.id === 'string') ids.add(element.properties.id);
    noteIds(element.children, paper, ids);
  }
}

function isAccount(element: Element): boolean {
  return element.tagName === 'details' && (has(element, 'account') || has(element, 'accounts'));
}

function has({ properties: { className } }: Element, name: string): boolean {
  return Array.isArray(className) && className.includes(name);
}
