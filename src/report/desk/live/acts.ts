import type { AddedPart, DocumentEdit } from '../../../notebook/edit/document-edit.js';
import { wordOf } from '../../live/say.js';
import { numberOf } from './parts.js';
import { lineOf, partOf } from './slots.js';
import { wordButton } from './word-button.js';

type Make = (edit: DocumentEdit) => void;

/** Words for what can be done with the row in which a place stands; none where it stands in no row. */
export function rowActs(slot: Element, make: Make): readonly HTMLElement[] {
  const row = slot.closest<HTMLElement>('.row');
  if (row === null) return [];
  const line = lineOf(row);
  return [
    acts([
      wordButton(wordOf('rowbelow'), () => make({ change: 'add row', below: line })),
      wordButton(wordOf('up'), () => make({ change: 'move row', line, down: false })),
      wordButton(wordOf('down'), () => make({ change: 'move row', line, down: true })),
      wordButton(wordOf('rowout'), () => make({ change: 'take row', line })),
    ]),
  ];
}

/** Words for what can be done with a part: moved, taken out, and others added below it. */
export function partActs(slot: Element, make: Make, headLine: number | null): readonly HTMLElement[] {
  const part = partOf(slot);
  const first = numberOf(part, 'first');
  const last = numberOf(part, 'last');
  const below = document.createElement('span');
  below.textContent = wordOf('addbelow');
  const added = [...document.querySelectorAll<HTMLElement>('.atend [data-add]')].map((button) =>
    wordButton(button.textContent, () =>
      make({ change: 'add part', below: last, part: button.dataset.add as AddedPart }),
    ),
  );
  const moving = part.classList.contains('settings')
    ? []
    : [
        ...(headLine === null
          ? []
          : [wordButton(wordOf('rowbelow'), () => make({ change: 'add row', below: headLine }))]),
        wordButton(wordOf('up'), () => make({ change: 'move part', first, down: false })),
        wordButton(wordOf('down'), () => make({ change: 'move part', first, down: true })),
        wordButton(wordOf('partout'), () => make({ change: 'take part', first, last })),
      ];
  return [acts(moving), acts([below, ...added])];
}

function acts(children: readonly HTMLElement[]): HTMLElement {
  const element = document.createElement('div');
  element.className = 'acts';
  element.append(...children);
  return element;
}
