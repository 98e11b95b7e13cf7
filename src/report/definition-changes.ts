import type { Element } from 'hast';
import { h } from 'hastscript';
import type { DefinitionChange } from '../record/file-sum.js';
import { inWords } from './anchor.js';
import { tableElement } from './table.js';
import { words } from './words.js';

/** Fields whose recorded meaning changed from one season to the next. */
export function definitionChanges(changes: readonly DefinitionChange[]): Element {
  if (changes.length === 0) return h('p', [words.noDefinitionChanges]);
  return tableElement({
    id: 'definition-changes',
    caption: words.changesCaption,
    heads: 2,
    head: [words.table, words.field, words.fromSeason, words.was, words.is].map((content) => ({ content })),
    rows: changes.map(({ table, field, season, was, is }) => [
      { content: inWords(table) },
      { content: inWords(field) },
      { content: String(season) },
      { content: was },
      { content: is },
    ]),
  });
}
