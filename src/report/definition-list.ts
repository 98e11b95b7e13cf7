import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';

/** A term and what is said of it. */
export type Entry = readonly [term: string, said: string | Element];

/** Terms with what is said of each. */
export function definitionList(entries: readonly Entry[]): Element {
  return h(
    'dl',
    entries.flatMap(([term, said]): ElementContent[] => [h('dt', [term]), h('dd', [said])]),
  );
}
