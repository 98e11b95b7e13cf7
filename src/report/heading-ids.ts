import type { RootContent } from 'mdast';
import { toString as plainText } from 'mdast-util-to-string';
import type { EvaluatedNotebook } from '../notebook/evaluated.js';
import { anchorOfWords } from './anchor.js';

/** A heading of the document in the page's contents. */
export interface PageHeading {
  readonly id: string;
  readonly depth: 2 | 3;
  readonly text: string;
}

/**
 * The document's headings by their node, without its title. The address comes from the heading's words; where two headings
 * say the same, from the words of the heading above as well, and last of all from the line.
 */
export function headingsOf(notebook: EvaluatedNotebook): ReadonlyMap<RootContent, PageHeading> {
  const headings = new Map<RootContent, PageHeading>();
  const taken = new Set<string>();
  let above = '';
  for (const block of notebook.blocks) {
    if (block.kind !== 'prose' || block.node.type !== 'heading' || isTitle(block.node, notebook)) continue;
    const text = plainText(block.node);
    const ids = [text, `${above} ${text}`, `${text} line ${block.node.position?.start.line ?? 0}`];
    const id =
      ids.map((name) => anchorOfWords('section', name)).find((name) => !taken.has(name)) ??
      anchorOfWords('section', ids[2]!);
    taken.add(id);
    if (block.node.depth <= 2) above = text;
    headings.set(block.node, { id, depth: block.node.depth <= 2 ? 2 : 3, text });
  }
  return headings;
}

/** Whether a node is the heading that the page's title already shows. */
export function isTitle(node: RootContent, notebook: EvaluatedNotebook): boolean {
  return node.type === 'heading' && node.depth === 1 && plainText(node) === notebook.title;
}
