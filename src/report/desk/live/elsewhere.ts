import { wordOf } from '../../live/say.js';
import type { DeskState } from '../desk-state.js';
import { wordButton } from './word-button.js';

/** Shows that the file was changed elsewhere, line by line, and offers both ways on; nothing where it was not. */
export function showElsewhere(
  { elsewhere, file }: DeskState,
  choose: (way: 'take' | 'keep', fingerprint: string) => void,
): void {
  const place = document.getElementById('elsewhere')!;
  place.replaceChildren();
  place.className = elsewhere === null ? '' : 'elsewhere';
  if (elsewhere === null) return;
  const strong = document.createElement('strong');
  strong.textContent = wordOf('elsewhere').replace('{}', file);
  const how = document.createElement('p');
  how.textContent = wordOf('elsewherehow');
  const list = document.createElement('dl');
  for (const { line, here, inFile } of elsewhere.lines) {
    list.append(entry('dt', String(line)));
    list.append(entry('dd', `${wordOf('here')}: ${here ?? wordOf('noline')}`));
    list.append(entry('dd', `${wordOf('infile')}: ${inFile ?? wordOf('noline')}`));
  }
  const { fingerprint } = elsewhere;
  place.append(
    strong,
    how,
    list,
    wordButton(wordOf('take'), () => choose('take', fingerprint)),
    wordButton(wordOf('keep'), () => choose('keep', fingerprint)),
  );
}

function entry(tag: 'dt' | 'dd', text: string): HTMLElement {
  const element = document.createElement(tag);
  element.textContent = text;
  return element;
}
