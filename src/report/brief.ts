import type { ElementContent } from 'hast';
import { h } from 'hastscript';
import type { EvaluatedNotebook } from '../notebook/evaluated.js';
import type { PageContext } from './page-context.js';
import type { PagePart } from './page-parts.js';
import { words } from './words.js';

/**
 * The parts of a page as a brief: what stands before the notebook's first thematic break, with the title, on one sheet of
 * paper or one wide screen, and which choice it shows if one was made; the contents, the workings behind the break and what every page says at its end below it,
 * on the screen alone. Without a break everything is on the sheet.
 */
export function briefElements(
  parts: readonly PagePart[],
  notebook: EvaluatedNotebook,
  context: PageContext,
): ElementContent[] {
  const breakAt = notebook.blocks.findIndex(({ kind, ...block }) => {
    return kind === 'prose' && 'node' in block && block.node.type === 'thematicBreak';
  });
  const onSheet = (key: string): boolean => {
    if (['title', 'public', 'shown', 'mend'].includes(key)) return true;
    const at = /^block-(\d+)$/.exec(key)?.[1];
    return at !== undefined && (breakAt < 0 || Number(at) < breakAt);
  };
  const elements = (some: readonly PagePart[]): ElementContent[] => some.flatMap((part) => [...part.elements]);
  const sheet = elements(parts.filter(({ key }) => onSheet(key)));
  // On paper accounts have no place on the one sheet.
  const below = sheet.filter((element) => context.paper?.accounts === true && isAccounts(element));
  return [
    h('section', { className: ['brief'] }, [
      ...sheet.filter((element) => !below.includes(element)),
      h('p', { className: ['note', 'from'] }, [words.briefFrom(context.date, notebook.fingerprint.slice(0, 12))]),
    ]),
    h('div', { className: ['workings'] }, [...below, ...elements(parts.filter(({ key }) => !onSheet(key)))]),
  ];
}

function isAccounts(element: ElementContent): boolean {
  return element.type === 'element' && String(element.properties.className) === 'accounts';
}
