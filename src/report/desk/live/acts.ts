import type { AddedPart, DocumentEdit } from '../../../notebook/edit/document-edit.js';
import { wordOf } from '../../live/say.js';
import { numberOf } from './parts.js';
import { lineOf, partOf } from './slots.js';
import { wordButton } from './word-button.js';

/** Makes an edit; it is asked for only when its turn comes, so that it speaks of the lines as they are by then. */
type Make = (edit: () => DocumentEdit) => void;

/** Words for what can be done with the row in which a place stands; none where it stands in no row. */
export function rowActs(slot: Element, make: Make): readonly HTMLElement[] {
  const row = slot.closest<HTMLElement>('.row');
  if (row === null) return [];
  const line = (): number => lineOf(row);
  // A row of the document is a column of its sheet.
  const [below, up, down, out] =
    row.tagName === 'TH' ? ['columnafter', 'earlier', 'later', 'columnout'] : ['rowbelow', 'up', 'down', 'rowout'];
  return [
    acts([
      wordButton(wordOf(below!), () => make(() => ({ change: 'add row', below: line() }))),
      wordButton(wordOf(up!), () => make(() => ({ change: 'move row', line: line(), down: false }))),
      wordButton(wordOf(down!), () => make(() => ({ change: 'move row', line: line(), down: true }))),
      wordButton(wordOf(out!), () => make(() => ({ change: 'take row', line: line() }))),
    ]),
  ];
}

/** Words for what can be done with a part: moved, taken out, and others added below it. */
export function partActs(slot: Element, make: Make, headLine: () => number | null): readonly HTMLElement[] {
  const part = partOf(slot);
  const first = (): number => numberOf(part, 'first');
  const last = (): number => numberOf(part, 'last');
  const below = document.createElement('span');
  below.textContent = wordOf('addbelow');
  const added = [...document.querySelectorAll<HTMLElement>('.atend [data-add]')].map((button) =>
    wordButton(button.textContent, () =>
      make(() => ({ change: 'add part', below: last(), part: button.dataset.add as AddedPart })),
    ),
  );
  const moving = part.classList.contains('settings')
    ? []
    : [
        ...(headLine === null
          ? []
          : [
              wordButton(wordOf(part.matches('.sheet') ? 'firstcolumn' : 'firstrow'), () =>
                make(() => ({ change: 'add row', below: headLine() ?? first() })),
              ),
            ]),
        wordButton(wordOf('up'), () => make(() => ({ change: 'move part', first: first(), down: false }))),
        wordButton(wordOf('down'), () => make(() => ({ change: 'move part', first: first(), down: true }))),
        wordButton(wordOf('partout'), () => make(() => ({ change: 'take part', first: first(), last: last() }))),
      ];
  return [acts(moving), acts([below, ...added])];
}

function acts(children: readonly HTMLElement[]): HTMLElement {
  const element = document.createElement('div');
  element.className = 'acts';
  element.append(...children);
  return element;
}
