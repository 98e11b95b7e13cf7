import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { type Holds, slotProperties } from './slot.js';
import { deskWords } from './words.js';

/** A part that holds whole lines (prose, a heading, a chart, settings): what it shows, and a word that opens its text. */
export function blockPart(
  holds: Extract<Holds, 'prose' | 'heading' | 'chart' | 'settings'>,
  text: string,
  shown: readonly ElementContent[],
  line = 0,
): Element {
  const label = deskWords[holds];
  const last = line + text.split('\n').length - 1;
  return h('div', slotProperties({ holds, line, last, column: 1, text, shown: [], label, at: null }), [
    h('div', { className: ['said'] }, [...shown]),
    h('button', { type: 'button', className: ['open', 'plain'] }, [
      deskWords.change,
      h('span', { className: ['unseen'] }, [` ${label}: ${beginning(text)}`]),
    ]),
  ]);
}

function beginning(text: string): string {
  return text.replace(/\s+/g, ' ').slice(0, 60);
}
