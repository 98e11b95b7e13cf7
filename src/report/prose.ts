import type { Element, ElementContent, Nodes } from 'hast';
import { defaultSchema, type Schema, sanitize } from 'hast-util-sanitize';
import { h } from 'hastscript';
import type { RootContent } from 'mdast';
import { toHast } from 'mdast-util-to-hast';
import type { Problem } from '../problem/problem.js';
import { inDocument } from '../problem/problem.js';
import { words } from './words.js';

/** What prose may become: text, lists, quotations, tables and links to the web, to mail or within a folder of pages. */
const allowed: Schema = {
  ...defaultSchema,
  tagNames: [
    ...['a', 'blockquote', 'br', 'code', 'del', 'em', 'h2', 'h3', 'h4', 'h5', 'h6', 'hr', 'li', 'ol', 'p', 'pre'],
    ...['strong', 'table', 'tbody', 'td', 'th', 'thead', 'tr', 'ul'],
  ],
  attributes: { a: ['href'], ol: ['start'], th: ['align'], td: ['align'] },
  protocols: { href: ['http', 'https', 'mailto'] },
};

/** What stands in the place of `{name}`, or a problem. */
export type ValueInProse = (
  name: string,
) => { readonly shown: ElementContent[] } | { readonly problem: Omit<Problem, 'place'> };

/** Prose as elements, with the problems met in it: what the page cannot show safely is left out and said so. */
export interface Prose {
  readonly elements: readonly ElementContent[];
  readonly problems: readonly Problem[];
}

/** A node of the document as elements; values stand where their names stood, except within code. */
export function proseElements(file: string, node: RootContent, standIn: ValueInProse): Prose {
  const problems: Problem[] = [];
  const hast = toHast(loweredHeading(node), { handlers: { html: () => undefined } });
  noteMarkup(file, node, problems);
  const safe = sanitize(withoutPictures(hast, file, problems) ?? { type: 'root', children: [] }, allowed);
  const filled = fillValues(safe, file, standIn, problems);
  const elements = filled.filter(
    (part): part is ElementContent => part.type === 'element' || (part.type === 'text' && part.value.trim() !== ''),
  );
  return { elements: elements.map(scrolling), problems };
}

/** A table of prose within a region that scrolls sideways by itself, so that the page never does. */
function scrolling(part: ElementContent): ElementContent {
  if (part.type !== 'element' || part.tagName !== 'table') return part;
  return h('div', { className: ['scroll'], role: 'group', ariaLabel: words.table, tabIndex: 0 }, [part]);
}

/** The page's title is its only first-level heading. */
function loweredHeading(node: RootContent): RootContent {
  return node.type === 'heading' && node.depth === 1 ? { ...node, depth: 2 } : node;
}

function leftOut(file: string, node: Nodes | RootContent, code: string, seen: string, remedy: string): Problem {
  const start = node.position?.start;
  return {
    code,
    severity: 'notes',
    place: inDocument(file, start?.line ?? 0, start?.column ?? 1),
    seen,
    wanted: 'text, tables, links and charts',
    remedy,
  };
}

function noteMarkup(file: string, node: RootContent, problems: Problem[]): void {
  if (node.type === 'html' && !/^<!--/.test(node.value)) {
    const remedy = 'Markup of a page is not carried over from a notebook; write it as plain text.';
    problems.push(leftOut(file, node, 'markup-left-out', node.value.split('\n')[0]!, remedy));
  }
  if ('children' in node) for (const child of node.children) noteMarkup(file, child, problems);
}

function withoutPictures(node: Nodes, file: string, problems: Problem[]): Nodes | undefined {
  if (node.type === 'element' && node.tagName === 'img') {
    const address = String(node.properties.src ?? '');
    const remedy = 'A page opens without fetching anything, so it carries no pictures from elsewhere.';
    problems.push(leftOut(file, node, 'picture-left-out', address, remedy));
    return { type: 'text', value: words.pictureLeftOut(String(node.properties.alt ?? '')) };
  }
  if (!('children' in node)) return node;
  const children = node.children.map((child) => withoutPictures(child as Nodes, file, problems) as ElementContent);
  return { ...node, children } as Element;
}

function fillValues(node: Nodes, file: string, standIn: ValueInProse, problems: Problem[]): ElementContent[] {
  if (node.type === 'text') return fillText(node, file, standIn, problems);
  if (node.type === 'root')
    return node.children.flatMap((child) => fillValues(child as Nodes, file, standIn, problems));
  if (node.type !== 'element') return [];
  if (node.tagName === 'code' || node.tagName === 'pre') return [node];
  return [{ ...node, children: node.children.flatMap((child) => fillValues(child, file, standIn, problems)) }];
}

function fillText(
  node: Extract<Nodes, { type: 'text' }>,
  file: string,
  standIn: ValueInProse,
  problems: Problem[],
): ElementContent[] {
  const parts: ElementContent[] = [];
  let from = 0;
  for (const match of node.value.matchAll(/\{([^{}]*)\}/g)) {
    if (match.index > from) parts.push({ type: 'text', value: node.value.slice(from, match.index) });
    const found = standIn(match[1]!.trim());
    if ('shown' in found) parts.push(...found.shown);
    else {
      problems.push({ ...found.problem, place: placeWithin(file, node, match.index + 1) });
      parts.push({
        type: 'element',
        tagName: 'mark',
        properties: {},
        children: [{ type: 'text', value: match[0] }],
      });
    }
    from = match.index + match[0].length;
  }
  if (from < node.value.length) parts.push({ type: 'text', value: node.value.slice(from) });
  return parts;
}

/** The place of a character of a text; exact while nothing before it was written as an escape. */
function placeWithin(file: string, node: Extract<Nodes, { type: 'text' }>, offset: number): Problem['place'] {
  const start = node.position?.start ?? { line: 0, column: 1 };
  const before = node.value.slice(0, offset).split('\n');
  const lines = before.length - 1;
  const column = lines === 0 ? start.column + offset : before[lines]!.length + 1;
  return inDocument(file, start.line + lines, column);
}
